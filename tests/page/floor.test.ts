import { chmodSync, cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'puppeteer';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OpenBrowser, openChromium } from '../../src/book/print/chromium.js';
import type { FloorFile } from '../../src/floor/hand-over.js';
import { shellbook } from '../cli/printed-book.js';
import { DEMO } from '../demo/store.js';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const PHONE = { width: 390, height: 844, hasTouch: true, isMobile: true };
/** A day's work; with SHELLBOOK_FUZZ the whole of it. */
const DAY = process.env.SHELLBOOK_FUZZ
  ? { welds: 40, photos: 12, nodes: 8, tests: 3 }
  : { welds: 3, photos: 1, nodes: 1, tests: 1 };

let opened: OpenBrowser;
let folder: string;
let store: string;
let page: Page;
const asked: string[] = [];
const wrong: string[] = [];
/** Taps and keys of whoever enters. */
const work = { taps: 0, keys: 0 };

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'floor-'));
  // The browser may run as another user than the tests do.
  chmodSync(folder, 0o755);
  store = path.join(folder, 'store');
  cpSync(DEMO, store, { recursive: true, filter: (from) => !from.includes('OV-021') && !from.endsWith('make') });
  await shellbook(store, 'floor', 'OV-024', '--out', path.join(folder, 'floor.html'), '--quiet');
  await shellbook(store, 'floor', 'OV-024', '--language', 'es', '--out', path.join(folder, 'es.html'), '--quiet');
  const picture = await sharp({ create: { width: 640, height: 480, channels: 3, background: '#6b7f86' } })
    .jpeg()
    .toBuffer();
  for (let i = 1; i <= DAY.photos; i++)
    writeFileSync(path.join(folder, `IMG_${i}.jpg`), Buffer.concat([picture, Buffer.from(`${i}`)]));
  for (const name of readdirSync(folder).filter((one) => one.endsWith('.jpg'))) chmodSync(path.join(folder, name), 0o644);
  opened = await openChromium();
  page = await open('floor.html');
});
afterAll(async () => {
  await opened?.close();
  rmSync(folder, { recursive: true, force: true });
});

async function open(file: string, before: (page: Page) => Promise<unknown> = async () => {}): Promise<Page> {
  const one = await opened.browser.newPage();
  one.on('request', (request) => void asked.push(request.url()));
  one.on('pageerror', (error) => void wrong.push(String(error)));
  await one.setViewport(PHONE);
  await one.setOfflineMode(true);
  // What the page saves as a file stays in it, for the test to read.
  await one.evaluateOnNewDocument(() => {
    const saved: string[] = [];
    Object.assign(window, { saved });
    const { click } = HTMLAnchorElement.prototype;
    HTMLAnchorElement.prototype.click = function (this: HTMLAnchorElement) {
      if (this.download === '') click.call(this);
      else saved.push(decodeURIComponent(this.href.slice(this.href.indexOf(',') + 1)));
    };
  });
  await before(one);
  await one.goto(pathToFileURL(path.join(folder, file)).href);
  await one.waitForSelector('html[data-ready]');
  return one;
}

const tap = async (selector: string): Promise<void> => {
  work.taps++;
  await page.$eval(selector, (one) => (one as HTMLElement).click());
};
const type = async (key: string, text: string): Promise<void> => {
  work.taps++;
  work.keys += text.length;
  await page.$eval(
    `[id="f-${key}"]`,
    (one, value) => {
      (one as HTMLInputElement).value = value;
      one.dispatchEvent(new Event('input', { bubbles: true }));
    },
    text,
  );
};
async function keepWell(): Promise<void> {
  await keep();
  expect([await faults(), await said()]).toEqual(['', expect.stringContaining('is kept')]);
}
/** What a form has in a field already is not typed again. */
const fill = async (fields: Readonly<Record<string, string>>): Promise<void> => {
  for (const [key, text] of Object.entries(fields)) {
    const now = await page.$eval(`[id="f-${key}"]`, (one) => (one as HTMLInputElement).value);
    if (now !== text) await type(key, text);
  }
};
const said = (): Promise<string> => page.$eval('#said', (one) => one.textContent ?? '');
const warnings = (): Promise<string> => page.$eval('#warnings', (one) => one.textContent ?? '');
const faults = (): Promise<string> => page.$$eval('.fault', (all) => all.map((one) => one.textContent).join(''));
const kept = (): Promise<number> => page.$$eval('#kept-list li', (all) => all.length);
/** Taps Keep and waits until the phone's memory has it, or until something is wrong. */
async function keep(): Promise<void> {
  const before = await kept();
  await page.$eval('#said', (one) => one.replaceChildren());
  await tap('#keep');
  await page.waitForFunction(
    (count) =>
      document.querySelectorAll('#kept-list li').length > count ||
      [...document.querySelectorAll('.fault')].some((one) => one.textContent !== '') ||
      document.getElementById('said')?.textContent !== '',
    {},
    before,
  );
}
const handOver = async (): Promise<FloorFile> => {
  await tap('#hand');
  await page.waitForFunction(() => (window as unknown as { saved: string[] }).saved.length > 0);
  return JSON.parse(await page.evaluate(() => (window as unknown as { saved: string[] }).saved.at(-1) as string)) as FloorFile;
};

/** Parts of the demo that are joined already: a weld more between them is one that counts. */
const PAIRS = [
  ...readFileSync(path.join(DEMO, 'shells/OV-024/welds-walls.yaml'), 'utf8').matchAll(/joins: \[([\w-]+, [\w-]+)\]/gu),
].map(([, pair]) => pair as string);
const weldOf = (i: number): Readonly<Record<string, string>> => ({
  joins: PAIRS[i % PAIRS.length] as string,
  type: 'fillet',
  size: '5/32 in',
  length: '8 in',
  sides: 'arrow',
  process: 'GMAW',
  procedure: 'WPS-11',
  filler: 'ER5356',
  position: '2F',
  welder: 'M3',
  stage: 'walls',
  date: '2026-07-23',
});

describe('the page for the floor', () => {
  it('asks who enters, and takes nothing before', async () => {
    await tap('#task-weld');
    expect(await said()).toContain('who is entering');
    await page.select('#who', 'M3');
    work.taps += 2;
  });

  it('says what is wrong beside its field, in words', async () => {
    await tap('#task-weld');
    await fill({ ...weldOf(0), size: '5/32' });
    await keep();
    expect(await faults()).toContain('unit');
    expect(await kept()).toBe(0);
  });

  it('takes no id that the record does not have', async () => {
    await fill({ size: '5/32 in', procedure: 'WPS-99' });
    await keep();
    expect(await faults()).toBe('WPS-99 is not in the record.');
    await fill({ procedure: 'WPS-11' });
  });

  it('warns of a welder whose papers do not cover the day, as check does', async () => {
    await fill({ process: 'GTAW' });
    expect(await warnings()).toContain('M3: no qualification on record covers this weld');
    await fill({ process: 'GMAW' });
    expect(await warnings()).toBe('');
  });

  it('keeps a day of work, and loses none of it when the page dies', async () => {
    await page.reload();
    await page.waitForSelector('html[data-ready]');
    work.taps = 0;
    work.keys = 0;
    await tap('#task-weld');
    for (let i = 0; i < DAY.welds; i++) {
      await fill(weldOf(i));
      await keepWell();
    }
    expect(await kept()).toBe(DAY.welds);
    // As when the phone's browser is killed.
    await page.goto('chrome://crash').catch(() => undefined);
    await page.close().catch(() => undefined);
    page = await open('floor.html');
    expect(await kept()).toBe(DAY.welds);
    await tap('#task-node');
    for (let i = 0; i < DAY.nodes; i++) {
      await fill({
        id: `D-00/F${i}`,
        kind: 'splice',
        circuit: 'D-00',
        at: `x: ${180 + i} in, y: 0 in, z: 10 in`.replace(/[xyz]: /gu, ''),
      });
      await keepWell();
    }
    await page.$eval('[data-to="home"]', (one) => (one as HTMLElement).click());
    await tap('#task-test');
    for (let i = 0; i < DAY.tests; i++) {
      await fill({
        kind: 'continuity',
        of: 'D-00',
        limit: '1 ohm',
        measured: '0.2 ohm',
        by: 'M3',
        date: '2026-09-25',
        stage: 'services',
      });
      await keepWell();
    }
    await page.$eval('[data-to="home"]', (one) => (one as HTMLElement).click());
    await tap('#task-photo');
    for (let i = 1; i <= DAY.photos; i++) {
      const input = await page.$('#f-picture');
      await (input as unknown as { uploadFile(file: string): Promise<void> }).uploadFile(path.join(folder, `IMG_${i}.jpg`));
      await fill({ of: 'P-L-06', taken: '2026-07-23', stage: 'walls' });
      await keepWell();
    }
    expect(await faults()).toBe('');
    expect(await kept()).toBe(DAY.welds + DAY.nodes + DAY.tests + DAY.photos);
    expect([wrong, asked.filter((url) => !/^(?:file|data|blob|chrome):/u.test(url))]).toEqual([[], []]);
  });

  it('takes under half the taps and keys of typing the same at a prompt', async () => {
    const file = await handOver();
    const typed = file.entries.reduce(
      (sum, { kind, data }) => sum + addLine(kind, data).join(' ').length + 'shellbook '.length,
      0,
    );
    expect(work.taps + work.keys).toBeLessThan(typed / 2);
  });

  it('comes in as if it had been typed', async () => {
    const file = await handOver();
    const [byHand, byPhone] = [path.join(folder, 'hand'), store];
    cpSync(store, byHand, { recursive: true });
    for (const { kind, id, data, picture } of file.entries) {
      if (picture !== undefined) {
        const jpeg = file.pictures.find(({ sha256 }) => sha256 === picture)?.jpeg ?? '';
        writeFileSync(path.join(byHand, 'shells/OV-024/photos', String(data.file)), Buffer.from(jpeg, 'base64'));
      }
      const { status, messages } = await shellbook(byHand, ...addLine(kind, { id, ...data }), '--quiet');
      expect([status, messages]).toEqual([0, '']);
    }
    writeFileSync(path.join(folder, 'day.json'), JSON.stringify(file));
    const taken = await shellbook(byPhone, 'import', 'floor', path.join(folder, 'day.json'), '--shell', 'OV-024', '--quiet');
    expect([taken.status, taken.messages]).toEqual([0, '']);
    const findings = async (root: string): Promise<unknown> => {
      const { answer } = await shellbook(root, 'check', 'OV-024', '--json', '--quiet');
      const told = JSON.parse(answer).findings as { rule: string; severity: string; ids: string[]; message: string }[];
      return told.map(({ rule, severity, ids, message }) => [rule, severity, ids, message].join(' ')).sort();
    };
    const wanted = await findings(byHand);
    expect(wanted).not.toEqual([]);
    expect(await findings(byPhone)).toEqual(wanted);
  });

  it('shows what a panel hides before it is closed, and how near the dew point a surface is', async () => {
    await page.$eval('[data-to="home"]', (one) => (one as HTMLElement).click());
    await tap('#task-closed');
    await fill({ record: 'BP-C-1' });
    expect(await warnings()).toContain('M-06/1: no test passed');
    await page.$eval('[data-to="home"]', (one) => (one as HTMLElement).click());
    await tap('#task-bond');
    // Air of 20 °C at 50 % has its dew point at 9.3 °C: WMO-No. 8, as the function is tested with.
    await fill({ 'bond.surface': '12 C', 'bond.air': '20 C', 'bond.humidity': '50 %' });
    expect(await warnings()).toContain('2.7 K above the dew point');
    await fill({ 'bond.surface': '13 C' });
    expect(await warnings()).toBe('');
  });

  it('hands over at once where the phone keeps nothing', async () => {
    const private_ = await open('floor.html', (one) =>
      one.evaluateOnNewDocument(() => {
        Object.defineProperty(window, 'indexedDB', {
          get() {
            throw new Error('refused');
          },
        });
      }),
    );
    const before = page;
    page = private_;
    expect(await said()).toContain('keeps nothing here');
    await page.select('#who', 'M3');
    await tap('#task-weld');
    await fill(weldOf(1));
    await tap('#keep');
    await page.waitForFunction(() => (window as unknown as { saved: string[] }).saved.length === 1);
    expect(
      (JSON.parse(await page.evaluate(() => (window as unknown as { saved: string[] }).saved[0] as string)) as FloorFile).entries,
    ).toHaveLength(1);
    await page.close();
    page = before;
  });

  it('has nothing that keeps somebody out, in either language, and asks for nothing', async () => {
    for (const file of ['floor.html', 'es.html']) {
      const one = await open(file);
      if (file === 'es.html') expect(await one.$eval('#task-weld', (button) => button.textContent)).toBe('Soldadura hecha');
      await one.select('#who', 'M3');
      for (const task of ['weld', 'photo', 'bond']) {
        await one.$eval(`#task-${task}`, (button) => (button as HTMLElement).click());
        const small = await one.$$eval(
          '.screen.here button, .screen.here input, .screen.here select, .screen.here summary',
          (all) =>
            all.filter((each) => each.checkVisibility() && each.getBoundingClientRect().height < 48).map((each) => each.id),
        );
        expect(small).toEqual([]);
        await one.evaluate(AXE);
        const told = await one.evaluate(async () => {
          const { axe } = window as unknown as {
            axe: { run(of: Document, how: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
          };
          const { violations } = await axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'] });
          return violations.map(({ id, nodes }) => `${id} ${nodes[0]?.html}`);
        });
        expect(told).toEqual([]);
        await one.$eval('[data-to="home"]', (button) => (button as HTMLElement).click());
      }
      await one.close();
    }
    expect([wrong, asked.filter((url) => !/^(?:file|data|blob|chrome):/u.test(url))]).toEqual([[], []]);
  });
});

/** The line that types a record at a prompt. */
function addLine(kind: string, data: Readonly<Record<string, unknown>>): readonly string[] {
  const fields = Object.entries(data).flatMap(([key, value]): string[] => {
    if (typeof value === 'object' && !Array.isArray(value) && value !== null)
      return Object.entries(value).flatMap(([inner, one]) => [`--${key}.${inner}`, String(one)]);
    return [`--${key}`, Array.isArray(value) ? value.flat().join(', ') : String(value)];
  });
  return ['add', kind, '--shell', 'OV-024', ...fields];
}
