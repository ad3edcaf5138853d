import { GUSSET_REACH_MM } from '../../compute/structure/openings.js';
import { length } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const gussetMissing: Rule = {
  name: 'opening.gusset-missing',
  severity: 'error',
  asks: 'missing',
  duty: 'trade',
  finds:
    'A slide-out opening with a corner that no gusset plate is near, or any opening that names a gusset that stands elsewhere.',
  why: 'The corners of a slide-out opening take its load each time it moves: they crack first.',
  source: 'common practice, no source',
  check({ model: { shell, shop }, figures }) {
    const byId = new Map(shell.openings.map((opening) => [opening.id, opening]));
    return figures.openings.flatMap(({ id, gussets, cornersWithoutGusset = [] }) => {
      const opening = byId.get(id);
      if (!opening) return [];
      const elsewhere = opening.gussets.filter((gusset) => !gussets.includes(gusset));
      if (cornersWithoutGusset.length === 0 && elsewhere.length === 0) return [];
      const reach = length(GUSSET_REACH_MM, shop.units);
      const bare = cornersWithoutGusset.length > 0 ? `has no gusset plate at: ${cornersWithoutGusset.join(', ')}` : '';
      const away = elsewhere.length > 0 ? `names ${elsewhere.join(', ')}, at none of its corners` : '';
      return [
        {
          message: `Opening ${id} ${[bare, away].filter((words) => words !== '').join('; ')}; expected a plate within ${reach} of each corner: record the gusset as a member with a \`plate\`, or correct where it stands`,
          ids: [id, ...elsewhere],
          place: opening.source.place('gussets'),
        } as const,
      ];
    });
  },
};
