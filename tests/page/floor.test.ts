import { chmodSync, cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type OpenBrowser, openChromium } from '../../src/book/print/chromium.js';
import { shellbook } from '../cli/printed-book.js';
import { DEMO } from '../demo/store.js';
import { FloorPhone, newLog, requestsIn } from './floor-phone.js';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** A day's work; with SHELLBOOK_FUZZ the whole of it. */
const DAY = process.env.SHELLBOOK_FUZZ
  ? { welds: 40, photos: 12, nodes: 8, tests: 3 }
  : { welds: 3, photos: 1, nodes: 1, tests: 1 };

let opened: OpenBrowser;
let folder: string;
let store: string;
let phone: FloorPhone;
const log = newLog();

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'floor-'));
  // The browser may run as another user than the tests do.
  chmodSync(folder, 0o755);
  store = path.join(folder, 'store');
  cpSync(DEMO, store, { recursive: true, filter: (from) => !from.includes('OV-021') && !from.endsWith('make') });
  await shellbook(store, 'floor', 'OV-024', '--out', path.join(folder, 'floor.html'), '--quiet');
  await shellbook(store, 'floor', 'OV-024', '--language', 'es', '--out', path.join(folder, 'es.html'), '--quiet');
  // Each another picture: the page makes them anew.
  for (let i = 1; i <= DAY.photos; i++)
    await sharp({ create: { width: 640, height: 480, channels: 3, background: { r: 12 * i, g: 127, b: 134 } } })
      .jpeg()
      .toFile(path.join(folder, `IMG_${i}.jpg`));
  for (const name of readdirSync(folder).filter((one) => one.endsWith('.jpg'))) chmodSync(path.join(folder, name), 0o644);
  opened = await openChromium();
  phone = await FloorPhone.open(opened.browser, file('floor.html'), log);
});
afterAll(async () => {
  await opened?.close();
  rmSync(folder, { recursive: true, force: true });
});

const file = (name: string): string => path.join(folder, name);

async function keepWell(): Promise<void> {
  expect(await phone.keep()).toContain('is kept');
}

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

/** Screens that a form opens. */
const SCREEN: Readonly<Record<string, string>> = { mark: '[data-extra="onphoto"]', pick: '[data-extra="drawing"]' };

describe('the page for the floor', () => {
  it('asks who enters, and takes nothing before', async () => {
    await phone.tap('#task-weld');
    expect(await phone.said()).toContain('who is entering');
    await phone.who('M3');
  });

  it('says what is wrong beside its field, in words', async () => {
    await phone.tap('#task-weld');
    await phone.fill({ ...weldOf(0), size: '5/32' });
    await phone.keep();
    expect(await phone.faults()).toContain('unit');
    expect(await phone.kept()).toBe(0);
  });

  it('takes no id that the record does not have', async () => {
    await phone.fill({ size: '5/32 in', procedure: 'WPS-99' });
    await phone.keep();
    expect(await phone.faults()).toBe('WPS-99 is not in the record.');
    await phone.fill({ procedure: 'WPS-11' });
  });

  it('warns of a welder whose papers do not cover the day, as check does', async () => {
    await phone.fill({ process: 'GTAW' });
    expect(await phone.warnings()).toContain('M3: no qualification on record covers this weld');
    await phone.fill({ process: 'GMAW' });
    expect(await phone.warnings()).toBe('');
  });

  it('keeps a day of work, and loses none of it when the page dies', async () => {
    await phone.reload();
    phone.taps = 0;
    phone.keys = 0;
    await phone.tap('#task-weld');
    for (let i = 0; i < DAY.welds; i++) {
      await phone.fill(weldOf(i));
      await keepWell();
    }
    expect(await phone.kept()).toBe(DAY.welds);
    // As when the phone's browser is killed.
    await phone.page.goto('chrome://crash').catch(() => undefined);
    await phone.page.close().catch(() => undefined);
    const { taps, keys } = phone;
    phone = await FloorPhone.open(opened.browser, file('floor.html'), log);
    Object.assign(phone, { taps, keys });
    expect(await phone.kept()).toBe(DAY.welds);
    await phone.tap('#task-node');
    for (let i = 0; i < DAY.nodes; i++) {
      await phone.fill({
        id: `D-00/F${i}`,
        kind: 'splice',
        circuit: 'D-00',
        at: `x: ${180 + i} in, y: 0 in, z: 10 in`.replace(/[xyz]: /gu, ''),
      });
      await keepWell();
    }
    await phone.task('test');
    for (let i = 0; i < DAY.tests; i++) {
      await phone.fill({
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
    await phone.task('photo');
    for (let i = 1; i <= DAY.photos; i++) {
      await phone.give('f-picture', file(`IMG_${i}.jpg`));
      await phone.fill({ of: 'P-L-06', taken: '2026-07-23', stage: 'walls' });
      await keepWell();
    }
    expect(await phone.faults()).toBe('');
    expect(await phone.kept()).toBe(DAY.welds + DAY.nodes + DAY.tests + DAY.photos);
    expect([log.wrong, requestsIn(log)]).toEqual([[], []]);
  });

  it('takes under half the taps and keys of typing the same at a prompt', async () => {
    const file = await phone.handOver();
    const typed = file.entries.reduce(
      (sum, { kind, data }) => sum + addLine(kind, data).join(' ').length + 'shellbook '.length,
      0,
    );
    expect(phone.taps + phone.keys).toBeLessThan(typed / 2);
  });

  it('comes in as if it had been typed', async () => {
    const file = await phone.handOver();
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
    await phone.task('closed');
    await phone.fill({ record: 'BP-C-1' });
    expect(await phone.warnings()).toContain('M-06/1: no test passed');
    // Before anything is filled in: above the first field of the form.
    const order = await phone.page.$$eval('#warnings, [data-field]', (all) => all.map((one) => one.id));
    expect(order[0]).toBe('warnings');
    await phone.task('test');
    const tested = {
      kind: 'pressure hold',
      of: 'M-06/1',
      limit: '80 psi',
      measured: '90 psi',
      instrument: 'PG-2',
      date: '2026-09-25',
      by: 'M3',
    };
    await phone.fill(tested);
    expect(await phone.warnings()).toBe('The reading is within its limit.');
    await keepWell();
    await phone.task('closed');
    await phone.fill({ record: 'BP-C-1' });
    expect(await phone.warnings()).not.toContain('M-06/1: no test passed');
    await phone.task('bond');
    // Air of 20 °C at 50 % has its dew point at 9.3 °C: WMO-No. 8, as the function is tested with.
    await phone.fill({ 'bond.surface': '12 C', 'bond.air': '20 C', 'bond.humidity': '50 %' });
    expect(await phone.warnings()).toContain('2.7 K above the dew point');
    await phone.fill({ 'bond.surface': '13 C' });
    expect(await phone.warnings()).toBe('');
  });

  it('hands over at once where the phone keeps nothing', async () => {
    const refused = await FloorPhone.open(opened.browser, file('floor.html'), log, (one) =>
      one.evaluateOnNewDocument(() => {
        Object.defineProperty(window, 'indexedDB', {
          get() {
            throw new Error('refused');
          },
        });
      }),
    );
    expect(await refused.said()).toContain('keeps nothing here');
    await refused.who('M3');
    await refused.task('weld');
    await refused.fill(weldOf(1));
    await refused.tap('#keep');
    await refused.page.waitForFunction(() => (window as unknown as { saved: string[] }).saved.length === 1);
    expect((await refused.saved()).entries).toHaveLength(1);
    await refused.page.close();
  });

  it('has nothing that keeps somebody out, in either language, and asks for nothing', async () => {
    for (const name of ['floor.html', 'es.html']) {
      const { page: one } = await FloorPhone.open(opened.browser, file(name), log);
      if (name === 'es.html') expect(await one.$eval('#task-weld', (button) => button.textContent)).toBe('Soldadura hecha');
      await one.select('#who', 'M3');
      for (const task of ['weld', 'node', 'mark', 'node', 'pick', 'photo', 'bond']) {
        await one.$eval(SCREEN[task] ?? `#task-${task}`, (button) => (button as HTMLElement).click());
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
        if (task !== 'node') await one.$eval('#form [data-to="home"]', (button) => (button as HTMLElement).click());
      }
      await one.close();
    }
    expect([log.wrong, requestsIn(log)]).toEqual([[], []]);
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
