import { DEW_MARGIN_K } from '../../compute/structure/bonds.js';
import { number, temperature } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const bondDewPoint: Rule = {
  name: 'panel.bond-dew-point',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A panel bonded on a surface less than 3 °C above the dew point of the air.',
  why: 'Water settles on the surface before anybody sees it, and the adhesive holds to the water.',
  source: 'EN 17460 practice, +3 °C (unverified citation); dew point by the Magnus formula',
  examples: {
    given: `
# panels.yaml
`,
    fails: `
- {id: SK-1, kind: skin, outline: [[0 m, -1 m, 0 m], [1 m, -1 m, 0 m], [1 m, -1 m, 1 m]], fixing: {method: bonded, applied: 2026-02-06}, bond: {surface: 16 C, air: 20 C, humidity: 70 %}}
`,
    passes: `
- {id: SK-1, kind: skin, outline: [[0 m, -1 m, 0 m], [1 m, -1 m, 0 m], [1 m, -1 m, 1 m]], fixing: {method: bonded, applied: 2026-02-06}, bond: {surface: 19 C, air: 20 C, humidity: 70 %}}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const byId = new Map(shell.panels.map((panel) => [panel.id, panel]));
    return figures.bonds.flatMap(({ panel: id, dewPointK, dewMarginK }) => {
      const panel = byId.get(id);
      if (!panel?.bond || dewPointK === undefined || dewMarginK === undefined || dewMarginK >= DEW_MARGIN_K - 1e-9) return [];
      const { surfaceK = 0 } = panel.bond;
      return [
        {
          message: `Panel ${id} was bonded at a surface of ${temperature(surfaceK, shop.units)}, ${number(dewMarginK, 1)} K above the dew point (${temperature(dewPointK, shop.units)}), expected at least ${DEW_MARGIN_K} K: pull a coupon of that day and decide it in findings.yaml`,
          ids: [id],
          place: panel.source.place('bond', 'surface'),
        } as const,
      ];
    });
  },
};
