import { length, position } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const spacing: Rule = {
  name: 'member.spacing',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'Two neighbouring trusses, or posts of a wall, further apart than the shop’s rule (20 in unless set). Openings do not count.',
  why: 'Skin and roof are laid out for the rule: a wider bay drums, buckles and leaves a sheet edge without a post.',
  source: 'limit `truss_spacing` in shop.yaml; common practice, no source',
  check({ model: { shell, shop }, figures }) {
    const byId = new Map(shell.members.map((member) => [member.id, member]));
    return figures.spacings.flatMap(({ row, wide }) =>
      wide.flatMap(({ between: [before, after], gapMm, at }) => {
        const member = byId.get(after);
        if (!member) return [];
        return [
          {
            message: `${after} stands ${length(gapMm, shop.units)} from ${before} (${row}), middle to middle, about ${position(at, shop.units)}, expected at most ${length(shop.limits.trussSpacingMm, shop.units)}: add the member between them, or correct where one of them stands`,
            ids: [after, before],
            place: member.source.place('from'),
          } as const,
        ];
      }),
    );
  },
};
