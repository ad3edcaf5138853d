import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { widthOf } from '../../src/cli/report/wrap.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
beforeAll(async () => {
  store = await laySmallStore();
});
afterAll(() => store.remove());

async function release(...args: readonly string[]) {
  const io = literalIo(store.root);
  const status = await runProgram(['release', 'T-1', '--quiet', ...args], io);
  return { status, answer: io.answer() };
}
async function json() {
  const { status, answer } = await release('--json');
  return { status, sheet: JSON.parse(answer) };
}

describe('release', () => {
  it('says what may be added on each axle with the reserve kept', async () => {
    const { sheet } = await json();
    expect(sheet).toMatchObject({ shellbook: 1, command: 'release', shell: 'T-1', basis: 'ticket', reserve: 0.05 });
    for (const one of sheet.budget) expect(Object.keys(one)).toContain('left_end_kg');
    // By hand: 14,500 lb GVWR less 3,320 + 2,440 weighed, 150 lb driver, 20 gal of water at 8.345 lb, 300 lb in the bay.
    expect(sheet.gvwr_left_kg / 0.45359237).toBeCloseTo(14500 - 5760 - 149.91 - 166.9 - 300, 0);
  });

  it('says what 100 kg at a station adds, and the most that the station may take', async () => {
    const { sheet } = await json();
    // Lever rule on 160 in (4064 mm): 100 kg at 2000 mm is 50.79 on the front and 49.21 on the rear.
    const at = sheet.stations.find((one: { x_mm: number }) => one.x_mm === 2000);
    expect(at.adds_kg.front).toBeCloseTo(100 - 200000 / 4064, 4);
    expect(at.adds_kg.rear).toBeCloseTo(200000 / 4064, 4);
    // On the centre line a load goes half to each end: the fuller end counts twice.
    const left = new Map<string, number>(
      sheet.budget.map((one: { axle: string; left_kg: number; left_end_kg: number; right_end_kg: number }) => [
        one.axle,
        Math.min(one.left_kg, 2 * one.left_end_kg, 2 * one.right_end_kg),
      ]),
    );
    const most = Math.min(
      (left.get('front') as number) / (1 - 2000 / 4064),
      (left.get('rear') as number) / (2000 / 4064),
      sheet.gvwr_left_kg,
    );
    expect(at.most_kg).toBeCloseTo(most, 3);
  });

  it('names the runs behind a face by their depth', async () => {
    const { sheet } = await json();
    const under = sheet.faces.find((one: { face: string }) => one.face === 'underside');
    // The light's run lies 4 in over a sheet of 0.090 in: 101.6 less half the sheet, the tolerance of 15 mm, and its own radius.
    const run = under.runs.find((one: { id: string }) => one.id === 'DC-1/1');
    expect(run.depth_mm).toBeLessThanOrEqual(101.6 - 1.143 - 15);
    expect(run.depth_mm).toBeGreaterThan(101.6 - 1.143 - 15 - 6);
    expect(run.panel).toBe('BP-1');
  });

  it('lists what paint must stay off', async () => {
    const { sheet } = await json();
    const access = sheet.do_not_paint.find((one: { what: string }) => one.what === 'access panels');
    expect(access.items.map((one: { id: string }) => one.id)).toEqual(['AP-1']);
  });

  it('ends with 1 while something is open, and lists it by zone', async () => {
    const { status, sheet } = await json();
    expect(status).toBe(1);
    const ids = sheet.open.flatMap((one: { findings: { ids: string[] }[] }) => one.findings.flatMap(({ ids: of }) => of));
    expect(ids.length).toBeGreaterThan(0);
    for (const { findings } of sheet.open)
      for (const one of findings) expect([one.severity, one.decided_by]).toEqual([expect.not.stringMatching('note'), undefined]);
  });

  it('fits 80 columns, with its cautions', async () => {
    for (const args of [[], ['--all']]) {
      const { answer } = await release(...args);
      for (const line of answer.split('\n')) expect(widthOf(line)).toBeLessThanOrEqual(80);
      for (const title of ['May be added, lb', 'Do not drill', 'Do not paint', 'Open items by zone', 'Cautions'])
        expect(answer).toContain(title);
      expect(answer).toContain('1M8GDM9AXKP042788');
    }
  });

  it('says "not verified" where nothing can be judged, and still names runs and places', async () => {
    const bare = await laySmallStore({
      'shells/T-1/shell.yaml': 'shell: T-1\ntitle: Without its chassis\n',
      'shells/T-1/weights.yaml': '[]\n',
    });
    const io = literalIo(bare.root);
    const status = await runProgram(['release', 'T-1', '--quiet'], io);
    bare.remove();
    expect(status).toBe(1);
    expect(io.answer()).toContain('Not verified');
    expect(io.answer()).toContain('DC-1/1');
  });
});
