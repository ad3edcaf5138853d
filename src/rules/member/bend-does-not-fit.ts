import { bendFaults } from '../../compute/solids.js';
import { length } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const bendDoesNotFit: Rule = {
  name: 'member.bend-does-not-fit',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A bend of which the arc is longer than the straight lengths beside it leave room for.',
  why: 'The member cannot have that form: its length, mass and place would be wrong.',
  source: 'geometry: an arc of radius R that turns by an angle begins R × tan(angle / 2) before the corner',
  examples: {
    given: `
# members.yaml
`,
    fails: `
- {id: WA-1, section: RT4x2, alloy: 6061-T6, from: [1 m, -1 m, 0 m], to: [2 m, -1 m, 0 m],
   bends: [{at: [1 m, -1 m, 500 mm], radius: 600 mm}, {at: [2 m, -1 m, 500 mm], radius: 300 mm}]}
`,
    passes: `
- {id: WA-1, section: RT4x2, alloy: 6061-T6, from: [1 m, -1 m, 0 m], to: [2 m, -1 m, 0 m],
   bends: [{at: [1 m, -1 m, 500 mm], radius: 300 mm}, {at: [2 m, -1 m, 500 mm], radius: 300 mm}]}
`,
  },
  check({ model: { shell, shop } }) {
    return shell.members.flatMap(({ id, shape, source }) => {
      if (shape.kind !== 'line' || !shape.bends) return [];
      return bendFaults(shape).map(({ bend, mostMm }) => {
        const radiusMm = shape.bends?.[bend]?.radiusMm ?? 0;
        const place = source.place('bends', bend, mostMm > 0 ? 'radius' : 'at');
        const message =
          mostMm > 0
            ? `Bend ${bend + 1} of member ${id} has a radius of ${length(radiusMm, shop.units)}, expected at most ${length(mostMm, shop.units)}: the straight lengths beside it are too short for it. Measure again and correct its \`radius\` or \`at\``
            : `Bend ${bend + 1} of member ${id} turns straight back or has no length beside it, expected a corner between two lengths: correct its \`at\``;
        return { message, ids: [id], place } as const;
      });
    });
  },
};
