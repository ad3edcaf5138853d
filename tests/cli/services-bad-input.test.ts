import { describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { literalIo } from './literal-io.js';
import { laySmallStore } from './small-store.js';

const HEAD = `service: House 12 V
medium: dc
circuits:
  - {id: DC-1, name: Bay light, voltage: 12.8 V, load: 4 A, conductor: {awg: 14, conductors: 2, rating: 105 C}, protection: {kind: fuse, rating: 10 A, at: DCP}, marking: DC-1}
nodes:
  - {id: BAT, kind: source, role: battery, name: House battery, at: [50 in, -24 in, 6 in]}
  - {id: DCP, kind: panel, role: busbar, name: House DC panel, at: [70 in, -24 in, 20 in]}
  - {id: DC-1/S1, kind: splice, at: [100 in, 0 in, 0 in], circuit: DC-1, panel: AP-1, tolerance: 15 mm}
  - {id: DC-1/L, kind: load, name: Bay light, at: [150 in, 20 in, 6 in], circuit: DC-1}
`;
const RUNS = `runs:
  - {id: DC-0, from: BAT, to: DCP, conductor: {awg: 6, conductors: 2, rating: 105 C}}
  - {id: DC-1/1, circuit: DC-1, from: DCP, to: DC-1/S1, via: [[70 in, 0 in, 0 in]], zones: [TROUGH], tolerance: 15 mm, date: 2026-04-07}
  - {id: DC-1/2, circuit: DC-1, from: DC-1/S1, to: DC-1/L, via: [[150 in, 0 in, 0 in]], zones: [TROUGH], tolerance: 15 mm, date: 2026-04-07}
`;
const ZONES =
  '- {id: TROUGH, name: belly trough, box: [[60 in, -16 in, -3 in], [140 in, 16 in, 3 in]], concealed: true, closed_by: [BP-1]}\n';

interface Slip {
  readonly what: string;
  readonly dc?: string;
  readonly zones?: string;
  readonly rule: string;
  readonly line: number;
  /** The probable slip, or what to type. */
  readonly says: string;
}

const SLIPS: readonly Slip[] = [
  {
    what: 'a run end that touches no node',
    dc: HEAD + RUNS.replace('to: DC-1/S1,', 'to: DC-1/S2,'),
    rule: 'format.unknown-reference',
    line: 12,
    says: 'Did you mean `DC-1/S1`',
  },
  {
    what: 'a way point metres outside, feet for inches',
    dc: HEAD + RUNS.replace('[[150 in, 0 in, 0 in]]', '[[150 ft, 0 in, 0 in]]'),
    rule: 'service.outside-envelope',
    line: 13,
    says: 'it fits when its feet are read as inches',
  },
  {
    what: 'a node listed twice under one id',
    dc: `${HEAD}  - {id: DC-1/L, kind: load, at: [150 in, 20 in, 6 in]}\n${RUNS}`,
    rule: 'format.duplicate-id',
    line: 10,
    says: 'DC-1/L',
  },
  {
    what: 'a node listed twice under two ids',
    dc: `${HEAD}  - {id: DC-1/S9, kind: splice, at: [100 in, 0 in, 0 in], tolerance: 15 mm}\n${RUNS}`,
    rule: 'service.node-twice',
    line: 10,
    says: 'at the very place of DC-1/S1',
  },
  {
    what: 'a zone box inside out',
    zones: ZONES.replace('[60 in, -16 in, -3 in]', '[60 in, 16 in, -3 in]'),
    rule: 'service.zone-inside-out',
    line: 1,
    says: 'lost minus sign',
  },
  {
    what: 'a circuit with no protection',
    dc: HEAD.replace(' protection: {kind: fuse, rating: 10 A, at: DCP},', '') + RUNS,
    rule: 'service.no-protection',
    line: 4,
    says: 'add `protection: {kind: fuse, rating: 15 A, at: …}`',
  },
  {
    what: 'a loop in a tree',
    dc: `${HEAD}${RUNS}  - {id: DC-1/3, circuit: DC-1, from: DCP, to: DC-1/L, marking: DC-1, via: [[70 in, 30 in, 6 in]]}\n`,
    rule: 'service.ring',
    line: 14,
    says: 'closes a ring in DC-1',
  },
];

describe('slips in services are told with their place and what was probably meant', () => {
  it.each(SLIPS.map((slip) => [slip.what, slip] as const))('%s', async (_, { dc, zones, rule, line, says }) => {
    const store = await laySmallStore({
      ...(dc === undefined ? {} : { 'shells/T-1/services/dc.yaml': dc }),
      ...(zones === undefined ? {} : { 'shells/T-1/zones.yaml': zones }),
    });
    try {
      const io = literalIo(store.root);
      const status = await runProgram(['check', 'T-1', '--json', '--quiet'], io);
      const { findings } = JSON.parse(io.answer()) as { findings: { rule: string; line: number; message: string }[] };
      const found = findings.filter((one) => one.rule === rule);
      expect(found.map((one) => one.line)).toContain(line);
      expect(found.map((one) => one.message).join('\n')).toContain(says);
      expect(status).toBe(1);
      // Whatever was wrong, the rest can still be looked up.
      const after = literalIo(store.root);
      expect(await runProgram(['where', 'T-1', 'DC-1', '--quiet'], after)).toBe(0);
      expect(after.answer()).toContain('DC-1 circuit Bay light');
    } finally {
      store.remove();
    }
  });
});
