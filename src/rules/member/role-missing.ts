import type { Member, MemberRole } from '../../records/index.js';
import type { Rule } from '../rule.js';
import { isSignedOff } from '../signed-off.js';

/** What a name may propose, and no more. */
const SUGGESTS: readonly (readonly [RegExp, MemberRole, Member['shape']['kind']])[] = [
  [/gusset/iu, 'gusset', 'plate'],
  [/\b(?:post|stud)s?\b/iu, 'post', 'line'],
  [/\btruss/iu, 'truss', 'line'],
];

const proposed = ({ part, shape }: Member): MemberRole | undefined =>
  SUGGESTS.find(([words, , kind]) => kind === shape.kind && words.test(part))?.[1];

/** Named one by one before the rest is counted. */
const MOST = 4;

export const memberRoleMissing: Rule = {
  name: 'member.role-missing',
  severity: 'warning',
  asks: 'missing',
  duty: 'administrator',
  finds:
    'Members that are called a truss, a post or a gusset and do not record it as their `role`. One finding a shell; a note where its stages are all signed off.',
  why: 'What a part is called decides nothing: such members are left out of the spacing of trusses and posts, and count at no corner of a slide-out unless its opening names them.',
  source: 'common practice, no source',
  examples: {
    given: `
# members.yaml
`,
    fails: `
- {id: T01, part: truss top chord, section: RT4x2, alloy: 6061-T6, from: [1 m, -1.2 m, 2.4 m], to: [1 m, 1.2 m, 2.4 m]}
`,
    passes: `
- {id: T01, part: truss top chord, role: truss, section: RT4x2, alloy: 6061-T6, from: [1 m, -1.2 m, 2.4 m], to: [1 m, 1.2 m, 2.4 m]}
`,
  },
  check({ model }) {
    const { members, openings } = model.shell;
    const named = new Set(openings.flatMap(({ gussets }) => gussets));
    const silent = members.flatMap((member) => {
      const role = member.role === undefined && !named.has(member.id) ? proposed(member) : undefined;
      return role === undefined ? [] : [{ member, role }];
    });
    const first = silent[0];
    if (!first) return [];
    const asked = silent.slice(0, MOST).map(({ member, role }) => `\`role: ${role}\` at ${member.id}`);
    const more = silent.length > MOST ? `, and ${silent.length - MOST} more` : '';
    return [
      {
        severity: isSignedOff(model) ? ('note' as const) : ('warning' as const),
        message: `${silent.length === 1 ? 'One member does' : `${silent.length} members do`} not record what they do in the shell, so no spacing and no corner is proved by them, expected it of each: type ${asked.join('; ')}${more}, if that is what they are`,
        ids: silent.map(({ member }) => member.id),
        place: first.member.source.place('role'),
        proposes: silent.map(({ member, role }) => ({ kind: 'member', id: member.id, path: ['role'], value: role })),
      },
    ];
  },
};
