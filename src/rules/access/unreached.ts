import type { PanelReach } from '../../compute/access/types.js';
import { length, type UnitSystem } from '../../quantity/format.js';
import type { Rule } from '../rule.js';
import { concealedNodes, named } from './needs-access.js';
import { standsWords } from './stands-words.js';

function nearest(best: PanelReach | undefined, units: UnitSystem): string {
  if (!best) return 'no access panel is near';
  const away = `the best, ${best.panel}, is ${length(best.distanceMm, units)} away`;
  if (best.reach === 'beyond') return `${away}, beyond what an arm or its opening allows`;
  return `${away} but ${standsWords(best)}`;
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
    'reach: ANSUR II 2012, 5th percentile; openings: MIL-STD-1472, unverified citation; the rule itself: common practice, no source',
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
`,
    fails: `
  - {id: S1, kind: splice, at: [3.5 m, 0 m, 0.15 m], tolerance: 10 mm}
`,
    passes: `
  - {id: S1, kind: splice, at: [1.05 m, 0 m, 0.15 m], tolerance: 10 mm}
`,
  },
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
