import type { Rule } from '../rule.js';

export const offcutHeat: Rule = {
  name: 'member.offcut-heat',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'An off-cut whose heat or alloy is not that of the member it was cut from.',
  why: 'One bar has one heat: a marking was copied wrong, or the off-cut is from another bar.',
  source: 'common practice, no source',
  examples: {
    given: `
# members.yaml
- {id: CB-1, section: RT4x2, alloy: 6061-T6, heat: H-1, from: [1 m, -1 m, 0 m], to: [1 m, 1 m, 0 m]}
`,
    fails: `
- {id: BR-1, offcut_of: CB-1, section: RT4x2, alloy: 6061-T6, heat: H-2, from: [2 m, -1 m, 0 m], to: [2 m, -0.8 m, 0 m]}
`,
    passes: `
- {id: BR-1, offcut_of: CB-1, section: RT4x2, alloy: 6061-T6, heat: H-1, from: [2 m, -1 m, 0 m], to: [2 m, -0.8 m, 0 m]}
`,
  },
  check({ model: { shell } }) {
    const byId = new Map(shell.members.map((member) => [member.id, member]));
    return shell.members.flatMap((member) => {
      const parent = byId.get(member.offcutOf ?? '');
      if (!parent) return [];
      const key = member.alloy !== parent.alloy ? 'alloy' : 'heat';
      const [own, wanted] = [member[key], parent[key]];
      if (own === undefined || wanted === undefined || own === wanted) return [];
      return [
        {
          message: `Member ${member.id} is an off-cut of ${parent.id} and has ${key} ${own}, expected ${wanted}: correct \`${key}\`, or \`offcut_of\``,
          ids: [member.id, parent.id],
          place: member.source.place(key),
          related: [{ message: `${parent.id}, from which it was cut`, place: parent.source.place(key) }],
        } as const,
      ];
    });
  },
};
