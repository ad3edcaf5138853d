import { repeats } from '../../compute/record/repeats.js';
import type { Rule } from '../rule.js';

/** Pairs named in a message; the ids have all of them. */
const SHOWN = 3;

export const recordRepeats: Rule = {
  name: 'record.repeats',
  severity: 'note',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'Records that say word for word what records of a shell begun earlier say: readings and dates of tests, tickets and openings, bonding logs, welds, heats of most members.',
  why: 'A file pasted from the last shell and not made anew looks complete and is evidence of nothing.',
  source: 'common practice, no source',
  examples: {
    given: `
# tests.yaml
- {id: TS-1, kind: drop, of: [X-1], limit: 1 psi, start: 30.2 psi, end: 29.9 psi, duration: 15 min, start_temperature: 18.5 C, end_temperature: 18.9 C, instrument: PG-1, date: 2026-04-02}
# shells/X-0/shell.yaml
shell: X-0
title: An earlier coach
# shells/X-0/welds.yaml
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, date: 2025-01-01}
# shells/X-0/tests.yaml
`,
    fails: `
- {id: TS-1, kind: drop, of: [X-0], limit: 1 psi, start: 30.2 psi, end: 29.9 psi, duration: 15 min, start_temperature: 18.5 C, end_temperature: 18.9 C, instrument: PG-1, date: 2026-04-02}
`,
    passes: `
- {id: TS-1, kind: drop, of: [X-0], limit: 1 psi, start: 30.5 psi, end: 30.1 psi, duration: 15 min, start_temperature: 17 C, end_temperature: 17.2 C, instrument: PG-1, date: 2025-04-02}
`,
  },
  check({ model: { shell, elsewhere } }) {
    if (!elsewhere) return [];
    return repeats(shell, elsewhere).map(({ shell: other, pairs, what }) => {
      const [first] = pairs as readonly [(typeof pairs)[number], ...typeof pairs];
      const named = pairs.slice(0, SHOWN).map(({ record, of }) => `${record.id} (${of.id})`);
      const more = pairs.length > SHOWN ? ` and ${pairs.length - SHOWN} more` : '';
      return {
        message: `The ${what} of ${named.join(', ')}${more} are those of ${other}, expected this shell's own: type what was read here, or say in a \`note\` why they agree`,
        ids: pairs.map(({ record }) => record.id),
        place: first.record.source.place(),
      } as const;
    });
  },
};
