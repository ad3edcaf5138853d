import type { Rule, RuleFinding } from '../rule.js';

export const alloySwapped: Rule = {
  name: 'member.alloy-swapped',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A member whose heat is certified for another alloy than the record says. A warning where only the temper differs. One finding for each heat and alloy.',
  why: 'Strength, filler and procedure all follow from the alloy: the paper and the record cannot both be right.',
  source: 'EN 10204:2004, unverified citation; common practice',
  examples: {
    given: `
# members.yaml
- {id: CB-1, section: RT4x2, alloy: 6061-T6, heat: H-1, from: [1 m, -1 m, 0 m], to: [1 m, 1 m, 0 m]}
# library/certificates.yaml
`,
    fails: `
- {id: MC-1, heats: [H-1], alloy: 5052-H32, type: 3.1}
`,
    passes: `
- {id: MC-1, heats: [H-1], alloy: 6061-T6, type: 3.1}
`,
  },
  check({ model: { shell }, figures }) {
    return figures.materials.heats.flatMap(({ heat, alloys, members, certificates }): readonly RuleFinding[] => {
      const certified = [...new Set(certificates.map(({ alloy }) => alloy))];
      const [paper] = certificates;
      if (!paper) return [];
      return alloys
        .filter((alloy) => !certified.includes(alloy))
        .flatMap((alloy) => {
          const own = shell.members.filter((member) => member.alloy === alloy && members.includes(member.id));
          const [first, ...others] = own;
          if (!first) return [];
          const temper = certified.some((one) => numberOf(one) === numberOf(alloy));
          return [
            {
              severity: temper ? 'warning' : 'error',
              message: `Member ${first.id}${others.length > 0 ? ` and ${others.length} more` : ''} of heat ${heat} ${others.length > 0 ? 'are' : 'is'} recorded as ${alloy}, expected ${certified.join(' or ')} by certificate ${paper.id}: read the marking on the part and correct \`${temper ? 'alloy' : 'alloy` or `heat'}\``,
              ids: own.map(({ id }) => id),
              place: first.source.place('alloy'),
              related: [{ message: `Certificate ${paper.id}`, place: paper.source.place('alloy') }],
            } as const,
          ];
        });
    });
  },
};

/** `6061` of `6061-T6`. */
const numberOf = (alloy: string): string => /^\D*\d{4}[A-Z]?/u.exec(alloy)?.[0] ?? alloy;
