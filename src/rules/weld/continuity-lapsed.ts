import { continuityGaps } from '../../compute/welding/continuity.js';
import type { Rule } from '../rule.js';

export const continuityLapsed: Rule = {
  name: 'weld.continuity-lapsed',
  severity: 'warning',
  finds:
    'A weld made more than six months after its welder last used the process, by this shell’s welds and the start of the welder’s qualifications. Welds on other shells are not looked at.',
  why: 'A qualification lapses when the process is not used: the first weld after the gap is not covered by it.',
  source: 'ISO 9606-2 clause 9.2 and AWS D1.2, from memory; 1 January holds to 1 July (common practice, no source)',
  check({ model }) {
    return continuityGaps(model).map(
      ({ weld, welder, process, since, until }) =>
        ({
          rule: 'weld.continuity-lapsed',
          severity: 'warning',
          message: `${welder} welded ${weld.id} with ${process} on ${weld.date}, last on record with it on ${since}, expected work on or before ${until}: name work on another shell in a finding record, or qualify the welder again`,
          ids: [weld.id, welder],
          place: weld.source.place('date'),
        }) as const,
    );
  },
};
