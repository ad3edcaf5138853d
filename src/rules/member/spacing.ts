import { length, positionWords } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const spacing: Rule = {
  name: 'member.spacing',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'Two neighbouring trusses, or posts of a wall, further apart than the shop’s rule (20 in unless set). Openings do not count.',
  why: 'Skins and roof are laid out for this spacing: a wider bay drums, buckles and leaves a sheet edge without a post.',
  source: 'limit `truss_spacing` in shop.yaml; common practice, no source',
  examples: {
    given: `
# members.yaml
- {id: T01, part: truss top chord, role: truss, stage: finished, section: RT4x2, alloy: 6061-T6, from: [1 m, -1.2 m, 2.4 m], to: [1 m, 1.2 m, 2.4 m]}
- {id: T02, part: truss top chord, role: truss, stage: finished, section: RT4x2, alloy: 6061-T6, from: [1.4 m, -1.2 m, 2.4 m], to: [1.4 m, 1.2 m, 2.4 m]}
`,
    fails: `
- {id: T03, part: truss top chord, role: truss, stage: finished, section: RT4x2, alloy: 6061-T6, from: [2.4 m, -1.2 m, 2.4 m], to: [2.4 m, 1.2 m, 2.4 m]}
`,
    passes: `
- {id: T03, part: truss top chord, role: truss, stage: finished, section: RT4x2, alloy: 6061-T6, from: [1.8 m, -1.2 m, 2.4 m], to: [1.8 m, 1.2 m, 2.4 m]}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const byId = new Map(shell.members.map((member) => [member.id, member]));
    return figures.spacings.flatMap(({ row, wide }) =>
      wide.flatMap(({ between: [before, after], gapMm, at }) => {
        const member = byId.get(after);
        if (!member) return [];
        return [
          {
            message: `${after} stands ${length(gapMm, shop.units)} from ${before} (${row}), middle to middle, about ${positionWords(at, shop.units)}, expected at most ${length(shop.limits.trussSpacingMm, shop.units)}: add the member between them, or correct where one of them stands`,
            ids: [after, before],
            place: member.source.place('from'),
          } as const,
        ];
      }),
    );
  },
};
