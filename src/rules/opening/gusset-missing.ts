import { GUSSET_REACH_MM } from '../../compute/structure/openings.js';
import { length } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const gussetMissing: Rule = {
  name: 'opening.gusset-missing',
  severity: 'error',
  asks: 'missing',
  duty: 'trade',
  finds:
    'A slide-out opening with no gusset plate near one of its corners, or an opening that names a gusset placed somewhere else.',
  why: 'The corners of a slide-out opening take its load each time it moves: they crack first.',
  source: 'common practice, no source',
  examples: {
    given: `
# openings.yaml
- {id: SO-1, kind: slide-out, wall: left, sill: [[1 m, -1.2 m, 0 m], [3 m, -1.2 m, 0 m]], width: 2000 mm, height: 1500 mm}
# members.yaml
- {id: G-1, part: corner gusset, role: gusset, alloy: 5052-H32, plate: {thickness: 5/16 in, outline: [[1 m, -1.2 m, 0 m], [1.3 m, -1.2 m, 0 m], [1 m, -1.2 m, 0.3 m]]}}
- {id: G-2, part: corner gusset, role: gusset, alloy: 5052-H32, plate: {thickness: 5/16 in, outline: [[3 m, -1.2 m, 0 m], [2.7 m, -1.2 m, 0 m], [3 m, -1.2 m, 0.3 m]]}}
- {id: G-3, part: corner gusset, role: gusset, alloy: 5052-H32, plate: {thickness: 5/16 in, outline: [[3 m, -1.2 m, 1.5 m], [2.7 m, -1.2 m, 1.5 m], [3 m, -1.2 m, 1.2 m]]}}
`,
    fails: `
# no plate at the fourth corner
`,
    passes: `
- {id: G-4, part: corner gusset, role: gusset, alloy: 5052-H32, plate: {thickness: 5/16 in, outline: [[1 m, -1.2 m, 1.5 m], [1.3 m, -1.2 m, 1.5 m], [1 m, -1.2 m, 1.2 m]]}}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const byId = new Map(shell.openings.map((opening) => [opening.id, opening]));
    return figures.openings.flatMap(({ id, gussets, cornersWithoutGusset = [] }) => {
      const opening = byId.get(id);
      if (!opening) return [];
      const elsewhere = opening.gussets.filter((gusset) => !gussets.includes(gusset));
      if (cornersWithoutGusset.length === 0 && elsewhere.length === 0) return [];
      const reach = length(GUSSET_REACH_MM, shop.units);
      const bare = cornersWithoutGusset.length > 0 ? `has no gusset plate at: ${cornersWithoutGusset.join(', ')}` : '';
      const away = elsewhere.length > 0 ? `names ${elsewhere.join(', ')}, not at any of its corners` : '';
      return [
        {
          message: `Opening ${id} ${[bare, away].filter((words) => words !== '').join('; ')}; expected a plate within ${reach} of each corner: record the gusset as a member with a \`plate\` and \`role: gusset\`, or name it in \`gussets\`, or correct its place`,
          ids: [id, ...elsewhere],
          place: opening.source.place('gussets'),
        } as const,
      ];
    });
  },
};
