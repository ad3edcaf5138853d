import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { literalIo } from './literal-io.js';
import { FILES, laySmallStore, type SmallStore } from './small-store.js';

const DC = FILES['shells/T-1/services/dc.yaml'] as string;
/** The line on which a text begins. */
const lineOf = (file: string, text: string): number => file.slice(0, file.indexOf(text)).split('\n').length;

const AC = `service: Mains 120 V
medium: ac
circuits:
  - {id: AC-1, voltage: 120 V, load: 10 A, conductor: {awg: 12, conductors: 3, rating: 90 C}, protection: {kind: breaker, rating: 15 A, at: SB}}
nodes:
  - {id: SHORE, kind: source, role: shore inlet, at: [60 in, 28 in, 10 in]}
  - {id: SB, kind: device, role: breaker, at: [62 in, 28 in, 10 in]}
  - {id: ATS, kind: device, role: changeover, at: [64 in, 28 in, 10 in]}
  - {id: OUT, kind: load, role: outlet, load: 1800 W, of: CMP-X, at: [70 in, 28 in, 10 in]}
  - {id: WRONG, kind: device, role: gas regulator, at: [72 in, 28 in, 10 in]}
runs:
  - {id: AC-1/1, circuit: AC-1, from: SHORE, to: SB, to_side: supply 1}
  - {id: AC-1/2, circuit: AC-1, from: SB, to: ATS, to_side: supply 1}
  - {id: AC-1/3, circuit: AC-1, from: ATS, from_side: load, to: OUT}
`;
const LOOP = `service: Loop
medium: dc
nodes:
  - {id: D1, kind: device, role: diode, at: [80 in, 20 in, 10 in]}
  - {id: D2, kind: device, role: diode, at: [84 in, 20 in, 10 in]}
runs:
  - {id: L1, from: D1, from_side: out, to: D2, to_side: in}
  - {id: L2, from: D2, from_side: out, to: D1, to_side: in}
`;

describe('what cannot be right in a service is told at its line, and the rest is still answered', () => {
  let store: SmallStore;
  let findings: readonly { readonly rule: string; readonly file: string; readonly line: number; readonly message: string }[];
  beforeAll(async () => {
    store = await laySmallStore({
      'shells/T-1/services/ac.yaml': AC,
      'shells/T-1/services/loop.yaml': LOOP,
      // The component is that of another shell.
      'shells/T-2/shell.yaml': 'shell: T-2\ntitle: The next one\n',
      'shells/T-2/components.yaml': '- {id: CMP-X, name: oven, mass: 40 lb, at: [0 in, 0 in, 10 in]}\n',
    });
    const io = literalIo(store.root);
    await runProgram(['check', 'T-1', '--json', '--quiet'], io);
    findings = JSON.parse(io.answer()).findings;
  });
  afterAll(() => store.remove());

  it.each([
    ['a run with a side that its node has not', 'service.role-misfit', AC, '- {id: AC-1/1', 'which has only `line`, `load`'],
    [
      'a role that does not fit the medium',
      'service.role-misfit',
      AC,
      '- {id: WRONG',
      'has the role gas regulator in a service of ac',
    ],
    ['a changeover with one supply', 'service.role-misfit', AC, '- {id: ATS', 'is a changeover with one supply'],
    ['a loop of one-way devices', 'service.one-way-loop', LOOP, '- {id: D1', 'D1'],
    ['a component of another shell', 'format.unknown-reference', AC, '- {id: OUT', '`CMP-X`'],
    ['power and current that disagree', 'service.load-disagrees', AC, '- {id: AC-1,', 'its nodes draw 15 A'],
  ] as const)('%s', (_, rule, text, line, says) => {
    const found = findings.filter((one) => one.rule === rule && one.message.includes(says));
    expect(found.map((one) => one.line)).toContain(lineOf(text, line));
  });

  it('a node that says it is of nothing is told, and its equipment is not proved', async () => {
    const away = await laySmallStore({
      'shells/T-1/services/dc.yaml': DC.replace('name: Bay light, at: [150', 'of: [], name: Bay light, at: [150'),
      'shells/T-1/components.yaml': '- {id: CMP-1, name: light, mass: 1 lb, at: [150 in, 20 in, 6 in]}\n',
    });
    const io = literalIo(away.root);
    const status = await runProgram(['isolate', 'T-1', 'CMP-1', '--json', '--quiet'], io);
    away.remove();
    expect(status).toBe(1);
    const { verified, unknown } = JSON.parse(io.answer());
    expect(verified).toBe(false);
    expect(unknown).toMatchObject([{ id: 'CMP-1', what: expect.stringContaining('no node is recorded `of: CMP-1`') }]);
  });

  it('the house 12 V, which has no fault, isolates as before', async () => {
    const io = literalIo(store.root);
    expect(await runProgram(['isolate', 'T-1', 'DCP', '--json', '--quiet'], io)).toBe(0);
    expect(JSON.parse(io.answer())).toMatchObject({ verified: true, sources_left: [] });
  });
});
