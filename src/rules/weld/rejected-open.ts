import type { Inspection } from '../../records/index.js';
import { TWO_MEMBERS } from '../example-records.js';
import type { Rule } from '../rule.js';

export const rejectedOpen: Rule = {
  name: 'weld.rejected-open',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A weld that was rejected, with no accepted inspection by the same method after it.',
  why: 'A rejected weld is repaired and looked at again, or it is still rejected.',
  source: 'ISO 9001:2015 clause 8.7.1; common practice for the method',
  examples: {
    given: `
${TWO_MEMBERS}
# welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: reject, reason: undercut}]}
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: reject, reason: undercut}, {method: VT, by: J2, date: 2026-03-04, result: accept, repair: 1}]}
`,
  },
  check({ model }) {
    return model.shell.welds.flatMap((weld) => {
      const open = weld.inspections.find((one, i) => one.result === 'reject' && !accepted(one, weld.inspections, i));
      if (!open) return [];
      const reason = open.reason === undefined ? '' : ` for ${open.reason}`;
      return [
        {
          message: `Weld ${weld.id} was rejected by ${open.method} on ${open.date}${reason} and never accepted since, expected a repair and a later ${open.method} that accepts it: record both under \`inspections\``,
          ids: [weld.id],
          place: weld.source.place('inspections', weld.inspections.indexOf(open)),
        } as const,
      ];
    });
  },
};

/** On a later day, or on the same day further down the list. */
function accepted(reject: Inspection, all: readonly Inspection[], at: number): boolean {
  return all.some(
    (one, i) =>
      one.result === 'accept' &&
      one.method.trim().toUpperCase() === reject.method.trim().toUpperCase() &&
      (one.date > reject.date || (one.date === reject.date && i > at)),
  );
}
