import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { bookDocument } from '../../src/book/document.js';
import { runProgram } from '../../src/cli/program.js';
import { takeOff } from '../../src/compute/takeoff/index.js';
import { FINGERPRINT, HISTORY, smallAssessment, smallStore } from '../book/small-store.js';
import { loadOne } from '../support/store.js';
import { literalIo } from './literal-io.js';
import { FILES, laySmallStore, type SmallStore } from './small-store.js';

/** As a wire list gives it before the tape is laid: a splice and the battery switch without a place. */
const DC = (FILES['shells/T-1/services/dc.yaml'] as string)
  .replace(', at: [100 in, 0 in, 0 in]', '')
  .replace('name: Battery switch, at: [52 in, -24 in, 8 in]', 'name: Battery switch');

describe('nodes that are recorded without a place', () => {
  let store: SmallStore;
  const answer = async (...argv: readonly string[]) => {
    const io = literalIo(store.root);
    const status = await runProgram([...argv, '--quiet'], io);
    return { status, text: io.answer() };
  };
  beforeAll(async () => {
    store = await laySmallStore({ 'shells/T-1/services/dc.yaml': DC });
  });
  afterAll(() => store.remove());

  it('are one warning a service, at the line of the first, and no other finding', async () => {
    const { findings } = JSON.parse((await answer('check', 'T-1', '--json')).text);
    const about = findings.filter((one: { ids: string[] }) => one.ids.some((id) => ['DC-1/S1', 'BAT/SW'].includes(id)));
    expect(about.map((one: { rule: string; line: number }) => [one.rule, one.line])).toEqual([['service.not-placed', 8]]);
  });

  it('are found: place, reach and length are not recorded, what they join is', async () => {
    const { text, status } = await answer('where', 'T-1', 'DC-1/S1');
    expect(status).toBe(0);
    expect(text).toMatch(/place not recorded/u);
    expect(text).toMatch(/reach +not known without a place/u);
    expect(text).toMatch(/joins +DC-1\/1, DC-1\/2/u);
    const run = JSON.parse((await answer('where', 'T-1', 'DC-1/1', '--json')).text).matches[0];
    expect(run).toMatchObject({ position_mm: null, place: null, path_mm: [], open: false });
    expect(run.length_mm ?? null).toBeNull();
  });

  it('isolate as any other; a drop over a run of unknown length is not known', async () => {
    const isolation = JSON.parse((await answer('isolate', 'T-1', 'DCP', '--json')).text);
    expect(isolation).toMatchObject({ verified: true, sources_left: [] });
    expect(isolation.actions.map((one: { id: string }) => one.id)).toContain('BAT/SW');
    const { circuit } = JSON.parse((await answer('where', 'T-1', 'DC-1', '--json')).text).matches[0];
    expect([circuit.length_mm ?? null, circuit.drop_v ?? null, circuit.ampacity_a]).toEqual([null, null, 25]);
  });

  it('may be behind any panel and near any drill: those answers say so', async () => {
    const behind = JSON.parse((await answer('behind', 'T-1', 'AP-1', '--json')).text);
    expect(behind.not_placed).toEqual(['DC-1/S1', 'BAT/SW', 'DC-0', 'DC-0/2', 'DC-1/1', 'DC-1/2']);
    expect((await answer('near', 'T-1', '100,0,0in')).text).toMatch(/No place is recorded for DC-1\/S1, BAT\/SW/u);
    expect((await answer('release', 'T-1')).text).toMatch(/not\s+in\s+this\s+answer, but possibly there/u);
    const { verified, unknown } = JSON.parse((await answer('isolate', 'T-1', 'AP-1', '--json')).text);
    expect(verified).toBe(false);
    expect(unknown[0].what).toContain('the place of DC-1/S1, BAT/SW');
  });

  it('weigh by the installed length at the middle of the rest, and how far off that may be goes with it', () => {
    const given = (more: string) =>
      takeOff(
        loadOne(
          smallStore({
            'shells/T-1/services/dc.yaml': `service: X\nmedium: dc\nnodes: [{id: A, kind: load, at: [0, 0, 0]}, {id: B, kind: load}]\nruns: [{id: R, from: A, to: B, conductor: {awg: 4/0}${more}}]\n`,
          }),
        ).model,
      );
    const measured = given(', installed_length: 10 m');
    const item = measured.items.find((one) => one.id === 'R');
    // 4/0 AWG: 107.2 mm² (ASTM B258) × 8890 kg/m³ × 10 m = 9.53 kg of copper, and its insulation.
    expect(item?.massKg).toBeGreaterThan(9.53);
    // Anywhere along 382 in of rail: 9,702.8 mm ÷ √12 (GUM 4.3.7).
    expect(item?.uPositionMm).toBeCloseTo((382 * 25.4) / Math.sqrt(12), 1);
    expect(measured.runs.find((one) => one.id === 'R')).toMatchObject({ lengthMm: 10_000, centroid: undefined });
    expect(measured.assumptions.join('\n')).toMatch(/places of their ends are not recorded: runs R\./u);
    const unmeasured = given('');
    expect(unmeasured.items.some((one) => one.id === 'R')).toBe(false);
    expect(unmeasured.assumptions.join('\n')).toMatch(/neither their length nor the places .*: runs R\./u);
  });

  it('are listed in the book, also where to run to in an emergency, and the drawings say that they are not in them', async () => {
    const gas = (smallStore()['shells/T-1/services/gas.yaml'] as string).replace(', at: [64 in, 40 in, -2 in]', '');
    const dc = (smallStore()['shells/T-1/services/dc-house.yaml'] as string).replace(', at: [150 in, -8 in, 0 in]', '');
    const assessment = smallAssessment({ 'shells/T-1/services/gas.yaml': gas, 'shells/T-1/services/dc-house.yaml': dc });
    const given = { assessment, edition: 'service' as const, fingerprint: FINGERPRINT, history: HISTORY };
    const { html: drawn } = await bookDocument({ ...given, photoFile: async () => undefined });
    // A note of a sheet may go over two lines.
    const html = drawn.replace(/<\/text><text[^>]*>/gu, ' ');
    expect(html).toContain('Not drawn, as their place is not recorded: 1 node and its runs.');
    expect(html.slice(html.indexOf('c-emergency'), html.indexOf('c-emergency') + 400_000)).toMatch(
      /LP-V1[\s\S]{0,600}place not recorded/u,
    );
  });
});
