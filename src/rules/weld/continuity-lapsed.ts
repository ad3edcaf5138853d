import { continuityGaps } from '../../compute/welding/continuity.js';
import { TWO_MEMBERS } from '../example-records.js';
import type { Rule } from '../rule.js';

export const continuityLapsed: Rule = {
  name: 'weld.continuity-lapsed',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds:
    'A weld made more than six months after its welder last used the process, by the welds of every shell in the store and the start of the welder’s qualifications.',
  why: 'A qualification lapses when the process is not used: the first weld after the gap is not covered by it.',
  source: 'ISO 9606-2 clause 9.2 and AWS D1.2, unverified citation; 1 January holds to 1 July (common practice, no source)',
  examples: {
    given: `
${TWO_MEMBERS}
# welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-07-02, inspections: [{method: VT, by: J2, date: 2026-07-03, result: accept}]}
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-06-30, inspections: [{method: VT, by: J2, date: 2026-07-03, result: accept}]}
`,
  },
  check({ model }) {
    return continuityGaps(model).map(
      ({ weld, welder, process, since, sinceElsewhere, until }) =>
        ({
          message: `${welder} welded ${weld.id} with ${process} on ${weld.date}, last on record with it on ${since}${sinceElsewhere === undefined ? '' : ` (${sinceElsewhere})`}, expected work on or before ${until}: record the weld that is missing between the two, or qualify the welder again`,
          ids: [weld.id, welder],
          place: weld.source.place('date'),
        }) as const,
    );
  },
};
