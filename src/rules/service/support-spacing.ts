import { length } from '../../quantity/format.js';
import { LAMP_NODES } from '../example-records.js';
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
${LAMP_NODES}
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
