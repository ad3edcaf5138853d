import type { Clamp } from '../../records/index.js';
import type { Rule } from '../rule.js';

/** Clamps named in a message; the ids have all of them. */
const SHOWN = 4;

export const clampCheckDue: Rule = {
  name: 'member.clamp-check-due',
  severity: 'note',
  asks: 'missing',
  duty: 'trade',
  finds: 'Clamps whose later check is set and not on record. One note for each distance or time.',
  why: 'Clamps settle in the paint oven and on the first drive: whoever drives the coach must know what still has to be done.',
  source: 'common practice, no source',
  examples: {
    given: `
# clamps.yaml
`,
    fails: `
- {id: UB-1, kind: U-bolt, at: [1 m, -0.4 m, 0 m], torque: 200 N.m, check_again: {after: 500 mi}}
`,
    passes: `
- {id: UB-1, kind: U-bolt, at: [1 m, -0.4 m, 0 m], torque: 200 N.m, check_again: {after: 500 mi}, checks: [{date: 2026-10-14, after: 500 mi}]}
`,
  },
  check({ model: { shell }, figures }) {
    const byId = new Map(shell.clamps.map((clamp) => [clamp.id, clamp]));
    const due = new Map<string, Clamp[]>();
    for (const { id, check, checkAgain } of figures.clamps.clamps) {
      const clamp = byId.get(id);
      if (clamp && check === 'due' && checkAgain !== undefined) due.set(checkAgain, [...(due.get(checkAgain) ?? []), clamp]);
    }
    return [...due].flatMap(([when, clamps]) => {
      const [first] = clamps;
      if (!first) return [];
      const more = clamps.length > SHOWN ? ` and ${clamps.length - SHOWN} more` : '';
      const named = clamps.slice(0, SHOWN).map(({ id }) => id);
      return [
        {
          message: `${named.join(', ')}${more} ${clamps.length === 1 ? 'is' : 'are'} to be checked ${when}, and no check is on record: when it is done, add \`checks: [{date: .., after: .., by: ..}]\``,
          ids: clamps.map(({ id }) => id),
          place: first.source.place('check_again'),
        } as const,
      ];
    });
  },
};
