import { eventsOf } from '../../compute/record/late-entries.js';
import { dayOf } from '../../quantity/day.js';
import type { Rule } from '../rule.js';

/** Records named in a message; the ids have all of them. */
const SHOWN = 5;

export const datedAhead: Rule = {
  name: 'record.dated-ahead',
  severity: 'note',
  asks: 'defect',
  duty: 'administrator',
  finds: 'Records of something done that are dated after the last commit of the shell. One note for all of them.',
  why: 'Nobody can have written down what had not happened yet: it is a slip of the year, or a plan in the place of a record.',
  source: 'common practice, no source',
  examples: {
    given: `
# members.yaml
- {id: A, section: RT4x2, alloy: 6061-T6, from: [0 m, 0 m, 0 m], to: [2 m, 0 m, 0 m], stage: floor}
- {id: B, section: RT4x2, alloy: 6061-T6, from: [1 m, 25.4 mm, 0 m], to: [1 m, 1 m, 0 m], stage: floor}
# welds.yaml
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
# git
`,
    fails: `
lastCommit: 2026-03-01
`,
    passes: `
lastCommit: 2026-03-09
`,
  },
  check({ model: { shell }, outside }) {
    const last = dayOf(outside?.lastCommit);
    if (last === undefined || (outside?.uncommitted?.length ?? 0) > 0) return [];
    const ahead = eventsOf(shell).filter(({ event }) => dayOf(event) > last);
    const [first] = ahead;
    if (!first) return [];
    const more = ahead.length > SHOWN ? ` and ${ahead.length - SHOWN} more` : '';
    const named = ahead.slice(0, SHOWN).map(({ record, event }) => `${record.id} (${event})`);
    return [
      {
        message: `Dated after the last commit of ${last}: ${named.join(', ')}${more}, expected what was done by then: correct the date, or leave it out until it is done`,
        ids: ahead.map(({ record }) => record.id),
        place: first.record.source.place('date'),
      },
    ];
  },
};
