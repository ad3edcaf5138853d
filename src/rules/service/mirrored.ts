import { mirroredFrom } from '../../compute/services/mirrored.js';
import { placedNodes } from '../../model/placed.js';
import { positionWords } from '../../quantity/format.js';
import type { Rule, RuleFinding } from '../rule.js';

export const nodeMirrored: Rule = {
  name: 'service.mirrored',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A node on one side of the coach whose panel and equipment stand on the other, and whose place would lie beside them if left were right.',
  why: 'Whoever measures from the other end, or looks from below, writes the wrong sign: the panel is then opened on the wrong side.',
  source: 'common practice, no source',
  examples: {
    given: `
# panels.yaml
- {id: SK-L, kind: skin, alloy: 5052-H32, thickness: 2 mm, outline: [[0 m, -1.2 m, 0 m], [2 m, -1.2 m, 0 m], [2 m, -1.2 m, 2 m], [0 m, -1.2 m, 2 m]]}
- {id: AP-1, kind: access, of: SK-L, outline: [[0.8 m, -1.2 m, 0.8 m], [1.2 m, -1.2 m, 0.8 m], [1.2 m, -1.2 m, 1.2 m], [0.8 m, -1.2 m, 1.2 m]]}
# services/dc.yaml
service: dc
medium: dc
nodes:
`,
    fails: `
  - {id: S1, kind: splice, at: [1 m, 1.1 m, 1 m], panel: AP-1}
`,
    passes: `
  - {id: S1, kind: splice, at: [1 m, -1.1 m, 1 m], panel: AP-1}
`,
  },
  check({ model }) {
    return placedNodes(model.shell.nodes).flatMap((node): readonly RuleFinding[] => {
      const other = mirroredFrom(node, model);
      if (other === undefined) return [];
      const side = node.at[1] < 0 ? 'left' : 'right';
      return [
        {
          message: `${node.id} is on the ${side} at ${positionWords(node.at, model.shop.units)}, and ${other} that it names on the other side, expected both on one: it fits when its sign on y is turned, compare the tape`,
          ids: [node.id, other],
          place: node.source.place('at'),
        },
      ];
    });
  },
};
