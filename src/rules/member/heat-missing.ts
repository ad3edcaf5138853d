import { isPrimary } from '../../compute/structure/materials.js';
import type { Model } from '../../model/shell.js';
import type { Member } from '../../records/index.js';
import type { Rule, RuleFinding } from '../rule.js';

/** Heats offered in a message. */
const SHOWN = 4;

export const heatMissing: Rule = {
  name: 'member.heat-missing',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'A primary member without a heat. One note for the shell while no member has one.',
  why: 'An off-cut without its heat is unknown metal, and a recall of that heat would miss it.',
  source: 'EN 1090-3 clause 5.2 (constituent products are traceable), unverified citation; off-cuts: common practice, no source',
  examples: {
    given: `
# members.yaml
- {id: CB-1, section: RT4x2, alloy: 6061-T6, heat: H-1, from: [1 m, -1 m, 0 m], to: [1 m, 1 m, 0 m]}
`,
    fails: `
- {id: CB-2, section: RT4x2, alloy: 6061-T6, from: [2 m, -1 m, 0 m], to: [2 m, 1 m, 0 m]}
`,
    passes: `
- {id: CB-2, section: RT4x2, alloy: 6061-T6, heat: H-1, from: [2 m, -1 m, 0 m], to: [2 m, 1 m, 0 m]}
`,
  },
  check({ model }) {
    const members = model.shell.members.filter(({ planned }) => planned !== true);
    const without = members.filter((member) => isPrimary(member) && member.heat === undefined);
    if (without.length === 0) return [];
    return members.some(({ heat }) => heat !== undefined) ? without.map((member) => lost(member, model)) : [none(members, model)];
  },
};

function lost(member: Member, { shell }: Model): RuleFinding {
  const parent = shell.members.find(({ id }) => id === member.offcutOf);
  const alike = [...new Set(shell.members.filter((other) => sameStock(other, member)).flatMap(({ heat }) => heat ?? []))].sort();
  const more = alike.length > SHOWN ? ` and ${alike.length - SHOWN} more` : '';
  const advice =
    parent?.heat !== undefined
      ? `it was cut from ${parent.id}, so add \`heat: ${parent.heat}\``
      : alike.length > 0
        ? `other pieces of this stock are from ${alike.slice(0, SHOWN).join(', ')}${more}: add \`heat:\` where its marking shows which, and \`offcut_of:\` with the member that it was cut from`
        : 'add `heat:` as marked on the bar or sheet';
  return {
    message: `Member ${member.id} has no heat on record, expected one for each primary member: ${advice}`,
    ids: [member.id],
    place: member.source.place(),
  };
}

const none = (members: readonly Member[], { shell }: Model): RuleFinding => ({
  severity: 'note',
  message: `None of the ${members.length} members has a heat on record, so no metal is traced: add \`heat:\` as marked on the bars and sheets`,
  ids: [shell.id],
  place: (members[0] as Member).source.place(),
});

/** The same section, or the same plate, of the same alloy. */
function sameStock(a: Member, b: Member): boolean {
  if (a.alloy !== b.alloy) return false;
  if (a.shape.kind === 'line') return b.shape.kind === 'line' && a.shape.section === b.shape.section;
  return b.shape.kind === 'plate' && Math.abs(a.shape.thicknessMm - b.shape.thicknessMm) < 0.1;
}
