import { length } from '../../quantity/format.js';
import type { Rule } from '../rule.js';
import { concealedNodes, named } from './needs-access.js';

export const blocked: Rule = {
  name: 'access.blocked',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A concealed node that an access panel is near enough to, but with something in the way and no other panel.',
  why: 'The panel was put there for it; one member, box or duct moved would make it good.',
  source: 'common practice, no source',
  check(given) {
    return concealedNodes(given).flatMap(([node, access]) => {
      const best = access.panels[0];
      if (access.inReach || !best || best.reach === 'beyond') return [];
      const away = length(best.distanceMm, given.model.shop.units);
      return [
        {
          message: `${best.panel} is ${away} from ${named(node)} but ${best.blockedBy.join(', ')} stands in the way, expected a clear way: move what blocks it, or the node, or the panel`,
          ids: [node.id, best.panel, ...best.blockedBy],
          place: node.source.place('at'),
        } as const,
      ];
    });
  },
};
