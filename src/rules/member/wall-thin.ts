import { thickness } from '../../quantity/format.js';
import { MM_PER_IN } from '../../quantity/units.js';
import type { Rule } from '../rule.js';

const LEAST_MM = MM_PER_IN / 8;
/** A wall typed in tenths of a millimetre may be a hair under 1/8 in. */
const ROUNDING_MM = 0.05;

export const wallThin: Rule = {
  name: 'member.wall-thin',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A tube among the members with a wall under 1/8 in (3.2 mm). One finding a section.',
  why: 'A thinner wall burns through and loses more of its strength to the heat of the weld.',
  source: 'common practice, no source',
  examples: {
    given: `
# members.yaml
- {id: CB-1, section: TUBE, alloy: 6061-T6, from: [1 m, -1 m, 0 m], to: [1 m, 1 m, 0 m]}
# library/sections.yaml
`,
    fails: `
- {id: TUBE, shape: rectangular tube, depth: 2 in, width: 2 in, wall: 0.080 in}
`,
    passes: `
- {id: TUBE, shape: rectangular tube, depth: 2 in, width: 2 in, wall: 1/8 in}
`,
  },
  check({ model: { shell, library, shop } }) {
    return [...library.sections.values()].flatMap(({ id, dimensions }) => {
      const tube =
        dimensions.shape === 'rectangular tube' || dimensions.shape === 'double hollow' || dimensions.shape === 'round tube';
      if (!tube || dimensions.wallMm >= LEAST_MM - ROUNDING_MM) return [];
      const users = shell.members.filter(({ shape }) => shape.kind === 'line' && shape.section === id);
      const [first, ...others] = users;
      if (!first) return [];
      const more = others.length > 0 ? ` and ${others.length} more` : '';
      return [
        {
          message: `Wall ${thickness(dimensions.wallMm, shop.units)} of section ${id} in member ${first.id}${more}, expected at least ${thickness(LEAST_MM, shop.units)} in a welded member: check the section, or record why it will do in findings.yaml`,
          ids: users.map((user) => user.id),
          place: first.source.place('section'),
        } as const,
      ];
    });
  },
};
