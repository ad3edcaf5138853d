import { qualified, type Shortfall } from '../../compute/welding/qualification.js';
import { thickness, type UnitSystem } from '../../quantity/format.js';
import type { Weld } from '../../records/index.js';
import { TWO_MEMBERS } from '../example-records.js';
import type { Rule } from '../rule.js';

export const welderUnqualified: Rule = {
  name: 'weld.welder-unqualified',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A weld outside its welder’s qualifications: process, position, date, thickness of the thinner part, material group. A warning if welder or date is not recorded, since it then cannot be verified.',
  why: 'The qualification is the evidence that this hand can make this weld.',
  source:
    'ISO 9606-2 and AWS D1.2: the ranges are those on the record; group cover 23 → 21, 22 by EN 287-2, position names by ISO 6947 Annex B, unverified citation',
  examples: {
    given: `
${TWO_MEMBERS}
# welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 4F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
  },
  check({ model }) {
    return model.shell.welds.flatMap((weld) => {
      const { verdict, reasons } = qualified(weld, model);
      if (verdict === 'qualified') return [];
      const words = reasons.map((reason) => say(reason, model.shop.units)).join('; ');
      const who = weld.welder === undefined ? '' : ` by ${weld.welder}`;
      return [
        {
          severity: verdict === 'not verified' ? 'warning' : 'error',
          message:
            verdict === 'not verified'
              ? `Weld ${weld.id} is not verified for its welder: ${words}`
              : `Weld ${weld.id}${who} is outside the welder's qualifications: ${words}. Correct the weld, or add the qualification to people.yaml`,
          ids: weld.welder === undefined ? [weld.id] : [weld.id, weld.welder],
          place: weld.source.place(fieldOf(reasons[0], weld)),
        } as const,
      ];
    });
  },
};

function say(reason: Shortfall, units: UnitSystem): string {
  switch (reason.what) {
    case 'no welder':
      return 'no welder is recorded: add `welder:`';
    case 'unknown welder':
      return 'the welder is not in people.yaml';
    case 'no date':
      return 'no date is recorded: add `date:`';
    case 'process':
      return `no qualification for ${reason.process}`;
    case 'position':
      return `position ${reason.position}, expected ${reason.listed.join(', ')}`;
    case 'before':
      return `welded on ${reason.date}, expected on or after ${reason.limit}`;
    case 'after':
      return `welded on ${reason.date}, expected on or before ${reason.limit}`;
    case 'thickness':
      return `thinner part ${thickness(reason.thicknessMm, units)}, expected ${thickness(reason.range[0], units)} to ${thickness(reason.range[1], units)}`;
    case 'group':
      return `material group ${reason.group}, expected ${reason.listed.join(', ')}`;
  }
}

function fieldOf(reason: Shortfall | undefined, weld: Weld): 'position' | 'process' | 'date' | 'joins' | 'welder' | 'id' {
  switch (reason?.what) {
    case 'position':
    case 'process':
      return reason.what;
    case 'before':
    case 'after':
    case 'no date':
      return 'date';
    case 'thickness':
    case 'group':
      return 'joins';
    default:
      return weld.welder === undefined ? 'id' : 'welder';
  }
}
