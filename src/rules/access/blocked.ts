import { standsInTheWay } from '../../compute/access/sight.js';
import { length } from '../../quantity/format.js';
import type { Rule } from '../rule.js';
import { concealedNodes, named } from './needs-access.js';
import { standsWords } from './stands-words.js';

export const blocked: Rule = {
  name: 'access.blocked',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A concealed node that an access panel is near enough to, but with something in the way and no other panel.',
  why: 'The panel was put there for it; one member, box or duct moved would make it good.',
  source: 'common practice, no source',
  examples: {
    given: `
# zones.yaml
- {id: TC, name: belly trough, box: [[0 m, -0.5 m, 0 m], [4 m, 0.5 m, 0.3 m]], closed_by: [BP-1], drains: [[2.9 m, 0 m, 0 m]]}
# panels.yaml
- {id: BP-1, kind: belly, thickness: 2 mm, outline: [[0 m, -0.5 m, 0 m], [4 m, -0.5 m, 0 m], [4 m, 0.5 m, 0 m], [0 m, 0.5 m, 0 m]]}
- {id: AP-1, kind: access, of: BP-1, opening: 300 mm x 300 mm, facing: down, outline: [[0.85 m, -0.15 m, 0 m], [1.15 m, -0.15 m, 0 m], [1.15 m, 0.15 m, 0 m], [0.85 m, 0.15 m, 0 m]]}
# services/dc.yaml
service: Lights
medium: dc
nodes:
  - {id: S1, kind: splice, at: [1 m, 0 m, 0.15 m], tolerance: 10 mm}
# components.yaml
`,
    fails: `
- {id: TRAY, name: ballast tray, mass: 5 kg, at: [1 m, 0 m, 0.05 m], size: 500 mm x 500 mm x 40 mm}
`,
    passes: `
- {id: TRAY, name: ballast tray, mass: 5 kg, at: [2.5 m, 0 m, 0.05 m], size: 500 mm x 500 mm x 40 mm}
`,
  },
  check(given) {
    return concealedNodes(given).flatMap(([node, access]) => {
      const best = access.panels[0];
      if (access.inReach || !best || best.reach === 'beyond') return [];
      const away = length(best.distanceMm, given.model.shop.units);
      return [
        {
          message: `${best.panel} is ${away} from ${named(node)} but ${standsWords(best)}, expected a clear way: move what blocks it, or the node, or the panel`,
          ids: [node.id, best.panel, ...standsInTheWay(best).filter((id) => given.model.shell.byId.has(id))],
          place: node.source.place('at'),
        } as const,
      ];
    });
  },
};
