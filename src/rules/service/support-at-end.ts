import { length } from '../../quantity/format.js';
import { LAMP_NODES } from '../example-records.js';
import type { Rule } from '../rule.js';

/** From a terminal to the first support, mm: 6 in. */
const FROM_END_MM = 152.4;

export const supportAtEnd: Rule = {
  name: 'service.support-at-end',
  severity: 'note',
  asks: 'defect',
  duty: 'trade',
  finds: 'A wire whose first support is more than 150 mm (6 in) from its terminal.',
  why: 'The terminal then carries the swinging wire.',
  source: 'common practice, no source',
  examples: {
    given: `
${LAMP_NODES}
runs:
`,
    fails: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, end_supports: 10 in}
`,
    passes: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, end_supports: 5 in}
`,
  },
  check({ model: { shell, shop } }) {
    return shell.runs
      .filter(({ medium, endSupportsMm }) => ['dc', 'ac', 'data'].includes(medium) && (endSupportsMm ?? 0) > FROM_END_MM + 0.5)
      .map((run) => ({
        message: `${run.id} is first supported ${length(run.endSupportsMm as number, shop.units)} from its terminal, expected ${length(FROM_END_MM, shop.units)} or less: add a support`,
        ids: [run.id],
        place: run.source.place('end_supports'),
      }));
  },
};
