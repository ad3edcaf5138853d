import { methodName } from '../../compute/welding/inspection.js';
import type { Person } from '../../model/library.js';
import type { Inspection } from '../../model/structure.js';
import { dayOf } from '../../quantity/day.js';
import type { Rule, RuleFinding } from '../rule.js';

export const inspectorUnqualified: Rule = {
  name: 'weld.inspector-unqualified',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A weld accepted by somebody who did not hold the method on that day. (By the welder: weld.own-inspection.)',
  why: 'The acceptance is worth what the eyes behind it are qualified for.',
  source: 'ISO 9712 (methods and their validity) and AWS D1.2, from memory: the dates are those on the record',
  check({ model: { shell, library } }) {
    return shell.welds.flatMap((weld) =>
      weld.inspections.flatMap((look, i): readonly RuleFinding[] => {
        const person = library.people.get(look.by);
        const why = person && look.by !== weld.welder && look.result === 'accept' ? shortfall(look, person) : undefined;
        if (!person || why === undefined) return [];
        return [
          {
            message: `Weld ${weld.id} was accepted by ${look.method} on ${look.date} by ${look.by}, ${why}: have it inspected by somebody who holds ${look.method}, or add the qualification to people.yaml`,
            ids: [weld.id, look.by],
            place: weld.source.place('inspections', i, 'by'),
            related: [{ message: `Qualifications of ${look.by}`, place: person.source.place('qualified') }],
          },
        ];
      }),
    );
  },
};

/** Undefined where some qualification covers the method on that day. */
function shortfall(look: Inspection, { qualified }: Person): string | undefined {
  const papers = qualified.filter(({ method }) => method !== undefined && methodName(method) === methodName(look.method));
  const day = dayOf(look.date);
  if (papers.some(({ from, until }) => from <= day && (until === undefined || day <= until))) return undefined;
  const [first] = papers;
  if (!first) return `who has no ${look.method}, expected a qualification for it`;
  const dates = papers.map(({ from, until }) => `${from} to ${until ?? 'now'}`).join(', ');
  return `expected a day within the qualification (${dates})`;
}
