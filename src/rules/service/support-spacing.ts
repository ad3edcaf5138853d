import { length } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

/** Of wires, mm: ABYC E-11 (18 in), unverified citation. */
const WIRES_MM = 457.2;

export const supportSpacing: Rule = {
  name: 'service.support-spacing',
  severity: 'note',
  asks: 'defect',
  duty: 'trade',
  finds: 'Wires supported less often than every 450 mm (18 in).',
  why: 'A wire that hangs free swings, chafes and pulls on its terminal.',
  source: 'ABYC E-11, support of conductors, unverified citation',
  examples: {
    given: `
# services/dc.yaml
service: dc
medium: dc
circuits:
  - {id: DC-1, voltage: 12 V, load: 5 A, protection: {kind: fuse, rating: 7.5 A, at: N1}, conductor: {awg: 14}}
nodes:
  - {id: N1, kind: source, name: battery, at: [0 m, 0 m, 1 m]}
  - {id: N2, kind: load, name: lamp, at: [3 m, 0 m, 1 m]}
runs:
`,
    fails: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, supports: 30 in}
`,
    passes: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, supports: 15 in}
`,
  },
  check({ model: { shell, shop } }) {
    return shell.runs
      .filter(({ medium, supportsMm }) => ['dc', 'ac', 'data'].includes(medium) && (supportsMm ?? 0) > WIRES_MM + 0.5)
      .map((run) => ({
        message: `${run.id} is supported every ${length(run.supportsMm as number, shop.units)}, expected every ${length(WIRES_MM, shop.units)} or closer: add supports`,
        ids: [run.id],
        place: run.source.place('supports'),
      }));
  },
};
