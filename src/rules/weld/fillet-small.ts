import { baseParts, thinnerMm } from '../../compute/welding/base.js';
import { leastFilletMm } from '../../compute/welding/fillet-least.js';
import { smallLength, thickness } from '../../quantity/format.js';
import { TWO_MEMBERS } from '../example-records.js';
import type { Rule } from '../rule.js';

/** A leg typed in whole millimetres may be a hair under the inch size: 3 mm stands for 1/8 in. */
const ROUNDING_MM = 0.2;

export const filletSmall: Rule = {
  name: 'weld.fillet-small',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A fillet whose leg is under the least for the thinner part: 1/8 in to 1/4 in of base metal, 3/16 to 1/2, 1/4 to 3/4, 5/16 above.',
  why: 'A small fillet on thick metal chills and does not fuse.',
  source: 'AWS D1.1 Table 5.7 (steel), unverified citation; the aluminium code’s own table is not confirmed',
  examples: {
    given: `
${TWO_MEMBERS}
# welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/16 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
  },
  check({ model }) {
    const { units } = model.shop;
    return model.shell.welds.flatMap((weld) => {
      const thin = weld.type === 'fillet' ? thinnerMm(baseParts(weld, model)) : undefined;
      if (thin === undefined || weld.sizeMm >= leastFilletMm(thin) - ROUNDING_MM) return [];
      return [
        {
          message: `Fillet ${weld.id} has a leg of ${smallLength(weld.sizeMm, units)} on ${thickness(thin, units)} metal, expected at least ${smallLength(leastFilletMm(thin), units)}: measure it again, lay another run, or record the decision in findings.yaml`,
          ids: [weld.id],
          place: weld.source.place('size'),
        } as const,
      ];
    });
  },
};
