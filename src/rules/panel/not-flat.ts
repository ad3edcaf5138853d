import { smallLength } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const notFlat: Rule = {
  name: 'panel.not-flat',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A panel with a corner further out of its plane than the shop’s limit (3 mm unless set).',
  why: 'A corner out of plane is a slip in a coordinate, or a panel that must be drawn as two.',
  source: 'limit `flatness` in shop.yaml; plane by Newell’s method through the mean of the corners',
  examples: {
    given: `
# panels.yaml
`,
    fails: `
- {id: SK-1, kind: skin, alloy: 5052-H32, thickness: 2 mm, outline: [[0 m, -1 m, 0 m], [1 m, -1 m, 0 m], [1 m, -1.03 m, 1 m], [0 m, -1 m, 1 m]]}
`,
    passes: `
- {id: SK-1, kind: skin, alloy: 5052-H32, thickness: 2 mm, outline: [[0 m, -1 m, 0 m], [1 m, -1 m, 0 m], [1 m, -1.004 m, 1 m], [0 m, -1 m, 1 m]]}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const byId = new Map(shell.panels.map((panel) => [panel.id, panel]));
    return figures.takeOff.panels.flatMap(({ id, outOfPlaneMm }) => {
      const panel = byId.get(id);
      if (!panel || outOfPlaneMm <= shop.limits.flatnessMm) return [];
      return [
        {
          message: `A corner of panel ${id} lies ${smallLength(outOfPlaneMm, shop.units)} out of the panel's plane, expected at most ${smallLength(shop.limits.flatnessMm, shop.units)}: correct its \`outline\`, or record a bent panel as one for each flat`,
          ids: [id],
          place: panel.source.place('outline'),
        } as const,
      ];
    });
  },
};
