import { createHash } from 'node:crypto';
import { chmodSync, cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { PDFDocument } from '@cantoo/pdf-lib';
import type { Page } from 'puppeteer';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OpenBrowser, openChromium } from '../../src/book/print/chromium.js';
import { printPlain } from '../../src/book/print/plain.js';
import { type Pixel, projectPoint } from '../../src/compute/camera/camera.js';
import { locateInPhoto } from '../../src/compute/pictures/locate.js';
import { namedPoints, pointLabel } from '../../src/compute/pictures/point-names.js';
import { solvePhoto } from '../../src/compute/pictures/solve-photo.js';
import type { FloorFile } from '../../src/floor/hand-over.js';
import { distance, lerp, type Vec3 } from '../../src/geometry/vector.js';
import { placeAt } from '../../src/model/place-at.js';
import type { Photo } from '../../src/records/index.js';
import { shellbook } from '../cli/printed-book.js';
import { DEMO, judged } from '../demo/store.js';
import { cameraTowards } from '../support/cameras.js';
import { FloorPhone, newLog, requestsIn } from './floor-phone.js';

const SIZE = { widthPx: 1280, heightPx: 960 };
/** Entries of each of the five phones; with SHELLBOOK_FUZZ a morning's. */
const EACH = process.env.SHELLBOOK_FUZZ ? 12 : 1;

/** With SHELLBOOK_FUZZ as many as a phone must hold. */
const MANY = process.env.SHELLBOOK_FUZZ ? { entries: 1000, photos: 200 } : { entries: 4, photos: 2 };

let opened: OpenBrowser;
let folder: string;
let store: string;
const log = newLog();
/** Of phones whose work comes in at the end. */
const handedOver: FloorFile[] = [];
const file = (name: string): string => path.join(folder, name);
const { assessment } = judged('OV-024');
const { model } = assessment;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'floor-'));
  // The browser may run as another user than the tests do.
  chmodSync(folder, 0o755);
  store = file('store');
  cpSync(DEMO, store, { recursive: true, filter: (from) => !from.includes('OV-021') && !from.endsWith('make') });
  await shellbook(store, 'floor', 'OV-024', '--out', file('floor.html'), '--quiet');
  const grey = sharp({ create: { width: SIZE.widthPx, height: SIZE.heightPx, channels: 3, background: '#6b7f86' } });
  writeFileSync(file('wall.jpg'), await grey.jpeg().toBuffer());
  const noise = sharp({
    create: {
      ...{ width: 1000, height: 800, channels: 3, background: '#000' },
      noise: { type: 'gaussian', mean: 128, sigma: 60 },
    },
  });
  writeFileSync(file('noise.jpg'), await noise.jpeg().toBuffer());
  // What a phone's recorder writes begins so: ISO/IEC 14496-12, 4.3.
  writeFileSync(file('note.m4a'), Buffer.concat([Buffer.from('\0\0\0\x18ftypM4A ', 'latin1'), Buffer.alloc(4000, 7)]));
  writeFileSync(file('long.m4a'), Buffer.concat([Buffer.from('\0\0\0\x18ftypM4A ', 'latin1'), Buffer.alloc(2 * 1024 * 1024)]));
  writeFileSync(file('none.m4a'), '<html>no sound</html>');
  for (const name of ['wall.jpg', 'noise.jpg', 'note.m4a', 'long.m4a', 'none.m4a']) chmodSync(file(name), 0o644);
  opened = await openChromium();
});
afterAll(async () => {
  await opened?.close();
  rmSync(folder, { recursive: true, force: true });
});

const phoneOf = async (): Promise<FloorPhone> => {
  const phone = await FloorPhone.open(await opened.browser.createBrowserContext(), file('floor.html'), log);
  await phone.who('M3');
  return phone;
};
/** Taps a drawing at a share of its frame. */
async function tapDrawing(phone: FloorPhone, view: string, u: number, v: number): Promise<void> {
  await phone.tap(`[data-view="${view}"]`);
  const box = await (await phone.page.$(`#v-${view} svg.plan`))?.boundingBox();
  if (!box) throw new Error(`no drawing ${view}`);
  await phone.page.touchscreen.tap(box.x + box.width * u, box.y + box.height * v);
}
/** Taps the photo at a pixel of it, enlarged so that a finger covers few. */
async function tapPhoto(phone: FloorPhone, [u, v]: Pixel): Promise<void> {
  const at = await phone.page.$eval(
    '#mark-window',
    (frame, x, y) => {
      const image = frame.querySelector('img') as HTMLImageElement;
      frame.scrollIntoView({ block: 'center' });
      const scale = image.clientWidth / image.naturalWidth;
      frame.scrollLeft = x * scale - frame.clientWidth / 2;
      frame.scrollTop = y * scale - frame.clientHeight / 2;
      const box = image.getBoundingClientRect();
      return [box.left + x * scale, box.top + y * scale];
    },
    u,
    v,
  );
  await phone.page.mouse.click(at[0] as number, at[1] as number);
}
const node = { id: 'D-00/F1', kind: 'splice', circuit: 'D-00' };

describe('a place on the floor page', () => {
  it('is tapped on the drawing: two lengths from the tap, the third asked for', async () => {
    const phone = await phoneOf();
    await phone.task('node');
    await phone.fill(node);
    await phone.tap('[data-extra="drawing"]');
    await tapDrawing(phone, 'left-out', 0.6, 0.5);
    expect(await phone.text('#pick-found')).toContain('not proved by a drawing');
    await phone.tap('#pick-use');
    expect(await phone.text('#pick-found')).toContain('without it the place is not proved');
    await phone.type('#pick-depth', '2 in');
    await phone.tap('#pick-use');
    const typed = await phone.field('at');
    expect(typed).toMatch(/^[\d.]+ in, 2 in right of SK-L-\d\d, [\d.]+ in$/u);
    const read = placeAt(typed, model);
    if (typeof read === 'string') throw new Error(read);
    const panel = model.shell.panels.find(({ id }) => typed.includes(id));
    if (!panel) throw new Error('no such panel');
    const [, y] = panel.outline[0] as Vec3;
    // 2 in from the inner face of a sheet of 0.09 in: about its middle plane, by arithmetic.
    expect(read.at[1] - y).toBeCloseTo(50.8 + (panel.thicknessMm ?? 0) / 2, 3);
    expect(Number.parseFloat(await phone.field('tolerance'))).toBeGreaterThan(10);
    expect(await phone.warnings()).toContain(`from ${panel.id}: hold the tape again`);
    expect(await phone.keep()).toContain('is kept');
  });

  it('is read from a photo just taken by known points in it, and says how sure; where it cannot, not proved', async () => {
    const left = namedPoints(model).filter(({ named }) => /^SK-L-0[1-4]$/u.test(named.is));
    const middle = lerp(left[0]?.at as Vec3, left.at(-1)?.at as Vec3, 0.5);
    const camera = cameraTowards([middle[0] + 400, -6200, middle[2] + 300], middle, 1000, SIZE);
    const shown = left.flatMap(({ named, at }) => {
      const px = projectPoint(camera, at)?.px;
      const isThere = px && px[0] > 20 && px[1] > 20 && px[0] < SIZE.widthPx - 20 && px[1] < SIZE.heightPx - 20;
      return isThere ? [{ label: pointLabel(named), at, px }] : [];
    });
    // Corners of neighbors lie on each other: each place once.
    const points = shown.filter(({ at }, i) => shown.findIndex((one) => distance(one.at, at) < 50) === i).slice(0, 6);
    expect(points.length).toBe(6);
    const sheet = model.shell.panels.find(({ id }) => id === 'SK-L-02');
    const wanted = lerp(sheet?.outline[0] as Vec3, sheet?.outline[2] as Vec3, 0.4);

    const phone = await phoneOf();
    await phone.task('node');
    await phone.fill(node);
    await phone.tap('[data-extra="onphoto"]');
    await phone.give('mark-picture', file('wall.jpg'));
    await phone.page.waitForFunction(() => (document.getElementById('mark-photo') as HTMLImageElement).naturalWidth > 0);
    for (let i = 0; i < 3; i++) await phone.tap('[data-enlarge="2"]');
    for (const { label, px } of points) {
      await tapPhoto(phone, px);
      await phone.type('#mark-name', label);
      await phone.tap('#mark-add');
      if (label === points[2]?.label)
        expect(await phone.text('#mark-said')).toBe('Not proved. 3 points of 5: add more, spread wide.');
    }
    expect(await phone.text('#mark-said')).toContain('tied to the coach to ±');
    await tapPhoto(phone, projectPoint(camera, wanted)?.px as Pixel);
    await phone.type('#mark-on', 'BP-C-1');
    await phone.tap('#mark-use');
    expect(await phone.text('#mark-said')).toContain('Not proved: the points lie in one plane');
    await phone.type('#mark-on', 'SK-L-02');
    await phone.tap('#mark-use');
    expect(await phone.said()).toMatch(/Place read from the photo, ± .* \(19 times in 20\)/u);
    const read = placeAt(await phone.field('at'), model);
    if (typeof read === 'string') throw new Error(read);
    const sure = Number.parseFloat(await phone.field('tolerance'));
    expect(distance(read.at, wanted)).toBeLessThan(Math.min(sure, 20));
    expect(await phone.keep()).toContain('D-00/F1 is kept');

    // The photo goes along with its points, so that the shop reads the same place from it.
    const handed = await phone.handOver();
    const [photo, placed] = handed.entries;
    expect([photo?.kind, placed?.data.photos, handed.pictures.length]).toEqual(['photo', [photo?.id], 1]);
    const solved = solvePhoto(model, photo?.data as unknown as Photo, SIZE);
    const again = locateInPhoto(model, solved, projectPoint(camera, wanted)?.px as Pixel, 'SK-L-02');
    expect('at' in again && distance(again.at, wanted)).toBeLessThan(20);
    handedOver.push(handed);
  });
});

describe('a joint, a weld, a panel', () => {
  it('is chosen by a tap on the drawing, and a joint also from those of one member', async () => {
    const phone = await phoneOf();
    await phone.task('weld');
    await phone.type('near', 'P-L-06');
    const offered = await phone.page.$$eval('#chips-joins button', (all) => all.map((one) => one.textContent ?? ''));
    expect([offered.length > 1, offered.every((one) => one.split(', ').includes('P-L-06'))]).toEqual([true, true]);
    await phone.tap('[data-extra="drawing"]');
    await tapDrawing(phone, 'plan', 0.5, 0.5);
    await phone.tap('#pick-found button');
    const [a, b] = (await phone.field('joins')).split(', ');
    expect(
      assessment.figures.joints.joints.some(({ members }) => members.includes(a as string) && members.includes(b as string)),
    ).toBe(true);
    await phone.task('look');
    await phone.tap('[data-extra="drawing"]');
    await tapDrawing(phone, 'plan', 0.5, 0.5);
    await phone.tap('#pick-found button');
    expect(model.shell.welds.map(({ id }) => id)).toContain(await phone.field('record'));
    await phone.task('closed');
    await phone.tap('[data-extra="drawing"]');
    await tapDrawing(phone, 'left-out', 0.6, 0.5);
    await phone.tap('#pick-found button');
    expect(model.shell.panels.map(({ id }) => id)).toContain(await phone.field('record'));
    expect(await phone.warnings()).not.toBe('');
  });
});

describe('tasks', () => {
  it('of which no other test has one are kept and handed over: an inspection, a run, a bond, a ticket, a panel closed', async () => {
    const phone = await phoneOf();
    const enter = async (task: string, fields: Readonly<Record<string, string>>): Promise<void> => {
      await phone.task(task);
      await phone.fill(fields);
      expect(await phone.keep()).toContain('is kept');
    };
    const look = {
      'inspections.1.method': 'VT',
      'inspections.1.by': 'J2',
      'inspections.1.date': '2026-07-29',
      'inspections.1.result': 'accept',
    };
    await phone.task('look');
    expect(await phone.text('#chips-record')).toContain('W-0107');
    await enter('look', { record: 'W-0107', ...look });
    await phone.task('photo');
    expect(await phone.text('#chips-of')).toContain('W-0107');
    await enter('run', { circuit: 'D-00', from: 'BAT', to: 'DCP', date: '2026-09-25' });
    await phone.task('bond');
    await phone.fill({ record: 'SK-L-02', 'bond.surface': '18 C' });
    expect(await phone.text('[data-field="bond.surface"] .on-record')).toBe('On record: 10 C');
    await enter('bond', { record: 'SK-L-02', 'bond.surface': '18 C', 'fixing.applied': '2026-10-05' });
    await enter('ticket', {
      date: '2026-09-25',
      scale: 'SC-2',
      ticket: '26-200',
      'readings.steer': '7000 lb',
      'readings.drive': '5600 lb',
      'condition.fuel': '1/4',
    });
    await enter('closed', { record: 'AP-01', date: '2026-11-09', by: 'M3' });
    const handed = await phone.handOver();
    expect(handed.entries.map(({ kind, does }) => `${does} ${kind}`)).toEqual([
      'append weld',
      'add run',
      'set panel',
      'add ticket',
      'set panel',
    ]);
    expect(handed.entries[3]?.data.readings).toEqual({ steer: '7000 lb', drive: '5600 lb' });
    handedOver.push(handed);
  });
});

describe('a voice note', () => {
  it('goes along with its entry as a file that is hashed; what is too long or no sound is not taken', async () => {
    const phone = await phoneOf();
    await phone.task('finding');
    await phone.fill({ description: 'scratch', of: 'P-L-06', raised: '2026-09-25' });
    await phone.give('f-voice', file('long.m4a'));
    expect(await phone.keep()).toContain('too long');
    await phone.give('f-voice', file('none.m4a'));
    expect(await phone.keep()).toContain('no sound');
    await phone.give('f-voice', file('note.m4a'));
    expect(await phone.keep()).toContain('is kept');
    await phone.reload();
    const handed = await phone.handOver();
    expect(handed.sounds?.map(({ name }) => name)).toEqual(['note.m4a']);
    handedOver.push(handed);
  });
});

describe('a phone whose memory is full', () => {
  // A browser holds pages with an address to a limit that can be set, and pages from a file to the disk's alone.
  it('says so, hands over at once, and keeps again when there is room', async () => {
    const origin = 'http://floor.example';
    const html = readFileSync(file('floor.html'), 'utf8');
    const context = await opened.browser.createBrowserContext();
    const phone = await FloorPhone.open(context, `${origin}/`, newLog(), async (page) => {
      await page.setRequestInterception(true);
      page.on('request', (request) => void request.respond({ status: 200, contentType: 'text/html', body: html }));
      await quota(page, 200_000);
    });
    await phone.who('M3');
    const enter = async (picture: string): Promise<string> => {
      await phone.task('photo');
      await phone.give('f-picture', file(picture));
      await phone.fill({ of: 'P-L-06', caption: picture });
      return phone.keep();
    };
    expect(await enter('wall.jpg')).toContain('is kept');
    expect(await enter('noise.jpg')).toContain('saved as OV-024-floor-');
    expect((await phone.saved()).entries.map(({ data }) => data.caption)).toEqual(['wall.jpg', 'noise.jpg']);
    await quota(phone.page);
    expect(await enter('wall.jpg')).toContain('is kept');

    async function quota(page: Page, bytes?: number): Promise<void> {
      const session = await page.createCDPSession();
      await session.send('Storage.overrideQuotaForOrigin', { origin, ...(bytes === undefined ? {} : { quotaSize: bytes }) });
    }
  });
});

describe('a phone that dies in the middle', () => {
  it('loses none of what it called kept, entries and photos: killed, reloaded, closed', async () => {
    const context = await opened.browser.createBrowserContext();
    let phone = await FloorPhone.open(context, file('floor.html'), log);
    await phone.who('M3');
    await phone.page.evaluate(enterMany, MANY.entries / 2, MANY.photos / 2);
    await phone.page.goto('chrome://crash').catch(() => undefined);
    await phone.page.close().catch(() => undefined);
    phone = await FloorPhone.open(context, file('floor.html'), log);
    expect(await phone.kept()).toBe((MANY.entries + MANY.photos) / 2);
    await phone.page.evaluate(enterMany, MANY.entries / 2, MANY.photos / 2);
    await phone.reload();
    expect(await phone.kept()).toBe(MANY.entries + MANY.photos);
    await phone.page.close();
    phone = await FloorPhone.open(context, file('floor.html'), log);
    const handed = await phone.handOver();
    expect([handed.entries.length, handed.pictures.length, new Set(handed.entries.map(({ key }) => key)).size]).toEqual([
      ...[MANY.entries + MANY.photos, MANY.photos, MANY.entries + MANY.photos],
    ]);
    for (const { sha256, jpeg } of handed.pictures)
      expect(createHash('sha256').update(Buffer.from(jpeg, 'base64')).digest('hex')).toBe(sha256);
    await context.close();
  });
});

/** In the page: enters so many findings and photos, each called kept before the next one. */
async function enterMany(entries: number, photos: number): Promise<void> {
  const count = (): number => document.querySelectorAll('#kept-list li').length;
  const set = (key: string, text: string): void => {
    const field = document.getElementById(`f-${key}`) as HTMLInputElement;
    field.value = text;
  };
  const keep = async (): Promise<void> => {
    const before = count();
    document.getElementById('keep')?.click();
    while (count() === before) await new Promise((done) => setTimeout(done, 1));
  };
  for (let i = 0; i < entries; i++) {
    document.getElementById('task-finding')?.click();
    set('description', `scratch ${i}`);
    set('of', 'P-L-06');
    set('raised', '2026-09-25');
    await keep();
  }
  for (let i = 0; i < photos; i++) {
    document.getElementById('task-photo')?.click();
    const canvas = document.createElement('canvas');
    Object.assign(canvas, { width: 640, height: 480 });
    const context = canvas.getContext('2d') as CanvasRenderingContext2D;
    context.fillStyle = `hsl(${(i * 37) % 360} 60% 50%)`;
    context.fillRect(0, 0, 640, 480);
    context.fillStyle = '#000';
    context.fillRect(i, count() % 400, 40, 40);
    const blob = (await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg'))) as Blob;
    const given = new DataTransfer();
    given.items.add(new File([blob], `IMG_${i}.jpg`));
    (document.getElementById('f-picture') as HTMLInputElement).files = given.files;
    set('of', 'P-L-06');
    await keep();
  }
}

describe('the sheet of paper', () => {
  it('is printed as a PDF of whole pages', async () => {
    const html =
      '<!doctype html><html lang="en"><head><meta charset="utf-8"><title>t</title><style>@page{size:letter}</style></head><body><p>Day</p></body></html>';
    const pdf = await PDFDocument.load(await printPlain(opened, html));
    // US letter: 8.5 by 11 in of 72 pt.
    expect(pdf.getPages().map((one) => [one.getWidth(), one.getHeight()])).toEqual([[612, 792]]);
  });
});

describe('five phones', () => {
  it('at once, in browsers of their own, come in whole in any order, each with numbers of its own', async () => {
    const five: FloorFile[] = [];
    await Promise.all(
      ['1', '2', '3', '4', '5'].map(async (name) => {
        const phone = await phoneOf();
        for (let i = 0; i < EACH; i++) {
          await phone.task('finding');
          await phone.fill({ description: `phone ${name}, ${i}`, of: 'P-L-06', raised: '2026-09-25' });
          expect(await phone.keep()).toContain('is kept');
        }
        five.push(await phone.handOver());
        await phone.page.browserContext().close();
      }),
    );
    expect(new Set(five.map(({ device }) => device.tag)).size).toBe(5);
    // With the place from a photo and the voice note of before.
    const files = [...five.toReversed(), ...handedOver].map((one, i) => {
      writeFileSync(file(`phone-${i}.json`), JSON.stringify(one));
      return file(`phone-${i}.json`);
    });
    const taken = await shellbook(store, 'import', 'floor', ...files, '--shell', 'OV-024', '--quiet');
    const what = `${5 * EACH + 1} findings, 3 changes to records, 1 picture, 1 voice note.`;
    expect([taken.status, taken.messages, taken.answer]).toEqual([0, '', expect.stringContaining(what)]);
    const findings = readFileSync(path.join(store, 'shells/OV-024/findings.yaml'), 'utf8');
    const [, note = '', sha256 = ''] = /x-voice:\s+\[?-?\s*\{?\s*file: ([\w./-]+),?\s+sha256:\s+(\w+)/u.exec(findings) ?? [];
    const sound = readFileSync(path.join(store, 'shells/OV-024', note));
    expect([sound.equals(readFileSync(file('note.m4a'))), createHash('sha256').update(sound).digest('hex')]).toEqual([
      true,
      sha256,
    ]);
    expect([log.wrong, requestsIn(log)]).toEqual([[], []]);
  });
});
