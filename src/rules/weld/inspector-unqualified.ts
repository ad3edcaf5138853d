import { type InspectorShortfall, inspectorShortfall } from '../../compute/welding/inspector.js';
import type { Inspection } from '../../records/index.js';
import { TWO_MEMBERS } from '../example-records.js';
import type { Rule, RuleFinding } from '../rule.js';

export const inspectorUnqualified: Rule = {
  name: 'weld.inspector-unqualified',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A weld accepted by somebody who did not hold the method on that day. (By the welder: weld.own-inspection.)',
  why: 'The acceptance is worth what the eyes behind it are qualified for.',
  source: 'ISO 9712 (methods and their validity) and AWS D1.2, unverified citation: the dates are those on the record',
  examples: {
    given: `
${TWO_MEMBERS}
# welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: PT, by: J2, date: 2026-03-03, result: accept}, {method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
  },
  check({ model: { shell, library } }) {
    return shell.welds.flatMap((weld) =>
      weld.inspections.flatMap((look, i): readonly RuleFinding[] => {
        const person = library.people.get(look.by);
        const short =
          person && look.by !== weld.welder && look.result === 'accept' ? inspectorShortfall(look, person) : undefined;
        if (!person || short === undefined) return [];
        return [
          {
            message: `Weld ${weld.id} was accepted by ${look.method} on ${look.date} by ${look.by}, ${wordsOf(short, look)}: have it inspected by somebody who holds ${look.method}, or add the qualification to people.yaml`,
            ids: [weld.id, look.by],
            place: weld.source.place('inspections', i, 'by'),
            related: [{ message: `Qualifications of ${look.by}`, place: person.source.place('qualified') }],
          },
        ];
      }),
    );
  },
};

/** In words for a finding. */
function wordsOf(short: InspectorShortfall, { method }: Inspection): string {
  return short.what === 'no method'
    ? `who has no ${method}, expected a qualification for it`
    : `expected a day within the qualification (${short.held.map(({ from, until }) => `${from} to ${until ?? 'now'}`).join(', ')})`;
}
