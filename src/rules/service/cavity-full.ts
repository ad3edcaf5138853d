import { percent } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const cavityFull: Rule = {
  name: 'service.cavity-full',
  severity: 'warning',
  finds: 'A cavity whose runs fill more of it than the shop allows.',
  why: 'A wire can no longer be drawn through without hurting the others, and the middle of the bundle runs hot.',
  source: '40 % for three and more in a raceway: NEC Chapter 9 Table 1, from memory. The shop sets it in shop.yaml',
  check({ model: { shell, shop }, figures }) {
    const zones = new Map(shell.zones.map((zone) => [zone.id, zone] as const));
    return figures.services.zones.flatMap((figure) => {
      const zone = zones.get(figure.id);
      if (!zone || figure.fill <= shop.limits.cavityFill) return [];
      const count = `${figure.runs.length} run${figure.runs.length === 1 ? '' : 's'}`;
      return [
        {
          rule: 'service.cavity-full',
          severity: 'warning',
          message: `${zone.id} is ${percent(figure.fill, 0)} full with ${count}, expected at most ${percent(shop.limits.cavityFill, 0)}: move runs to another cavity, or compare its clear size`,
          ids: [zone.id, ...figure.runs],
          place: zone.source.place(zone.clearMm ? 'clear' : 'box'),
        } as const,
      ];
    });
  },
};
