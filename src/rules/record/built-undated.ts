import type { RecordBase } from '../../records/index.js';
import type { Rule } from '../rule.js';

/** Records named in a message; the ids have all of them. */
const SHOWN = 6;

export const builtUndated: Rule = {
  name: 'record.built-undated',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'Records that were planned, are in the coach now, and carry no `date`.',
  why: 'What was planned for months has no other day on record, so nobody can tell whether its photo or test came before or after it was built.',
  source: 'common practice, no source',
  examples: {
    given: `
# git
builtSincePlanned: [CMP-1]
`,
    fails: `
# components.yaml
- {id: CMP-1, name: awning, mass: 40 kg, at: [3 m, 1 m, 2 m], basis: catalogue}
`,
    passes: `
# components.yaml
- {id: CMP-1, name: awning, mass: 40 kg, at: [3 m, 1 m, 2 m], basis: catalogue, date: 2026-05-04}
`,
  },
  check({ model: { shell, builtSincePlanned } }) {
    const kinds = new Map<string, RecordBase[]>();
    for (const id of builtSincePlanned ?? []) {
      const entry = shell.byId.get(id);
      const record = entry?.record as RecordBase | undefined;
      if (entry && record && record.planned !== true && record.date === undefined)
        kinds.set(entry.kind, [...(kinds.get(entry.kind) ?? []), record]);
    }
    return [...kinds.values()].map((records) => {
      const [first] = records as [RecordBase, ...RecordBase[]];
      const more = records.length > SHOWN ? ` and ${records.length - SHOWN} more` : '';
      const named = records.slice(0, SHOWN).map(({ id }) => id);
      const [was, is] = records.length === 1 ? ['was', 'is'] : ['were', 'are'];
      return {
        message: `${named.join(', ')}${more} ${was} planned and ${is} in the coach now, expected the day on which it was built: add \`date:\``,
        ids: records.map(({ id }) => id),
        place: first.source.place(),
      };
    });
  },
};
