import type { PanelReach } from '../../compute/access/types.js';
import { length, type UnitSystem } from '../../quantity/format.js';
import type { Rule } from '../rule.js';
import { concealedNodes, named } from './needs-access.js';

function nearest(best: PanelReach | undefined, units: UnitSystem): string {
  if (!best) return 'no access panel is near';
  const away = `the best, ${best.panel}, is ${length(best.distanceMm, units)} away`;
  if (best.reach === 'beyond') return `${away}, beyond what an arm or its opening allows`;
  return `${away} and blocked by ${best.blockedBy.join(', ')}`;
}

export const unreached: Rule = {
  name: 'access.unreached',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A concealed splice, valve, junction, connector, terminal, drain, device, panel, test point or gas fitting that no access panel reaches.',
  why: 'When it fails, the skin must be cut.',
  source:
    'reach: ANSUR II 2012, 5th percentile; openings: MIL-STD-1472, from memory; the rule itself: common practice, no source',
  check(given) {
    const { units } = given.model.shop;
    return concealedNodes(given)
      .filter(([, access]) => !access.inReach)
      .map(([node, access]) => ({
        message: `${named(node)} is reached through no access panel (${nearest(access.panels[0], units)}), expected one within an arm’s length with a clear way: add an access panel, or move it`,
        ids: [node.id, ...(access.panels[0] ? [access.panels[0].panel] : [])],
        place: node.source.place('at'),
      }));
  },
};
