import { isClear } from '../../compute/access/sight.js';
import { length } from '../../quantity/format.js';
import type { Rule, RuleFinding } from '../rule.js';
import { standsWords } from './stands-words.js';

export const namedPanelDoesNotReach: Rule = {
  name: 'access.named-panel-does-not-reach',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A node whose record names a panel that does not open onto it: too far, on the wrong side, blocked, or no access panel.',
  why: 'A technician opens the wrong panel, and trusts the book no more.',
  source: 'reach: ANSUR II 2012, 5th percentile; openings: MIL-STD-1472, unverified citation',
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
  - {id: S1, kind: splice, at: [3.5 m, 0 m, 0.15 m], tolerance: 10 mm, panel: AP-1}
`,
    passes: `
  - {id: S1, kind: splice, at: [1.05 m, 0 m, 0.15 m], tolerance: 10 mm, panel: AP-1}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const panels = new Map(shell.panels.map((panel) => [panel.id, panel] as const));
    const found = new Map(figures.access.nodes.map((node) => [node.id, node] as const));
    return shell.nodes.flatMap((node): readonly RuleFinding[] => {
      const panel = node.panel === undefined ? undefined : panels.get(node.panel);
      const access = found.get(node.id);
      if (!panel || !access || access.placed === false) return [];
      const reach = access.panels.find((one) => one.panel === panel.id);
      if (reach && isClear(reach)) return [];
      const better = access.panels.find(isClear);
      const why = !reach
        ? `it is a ${panel.panelKind} panel, no access panel`
        : reach.reach === 'beyond'
          ? `it is ${length(reach.distanceMm, shop.units)} away, beyond reach through its opening`
          : standsWords(reach);
      return [
        {
          message: `${node.id} says that ${panel.id} opens it, but ${why}, expected a panel that reaches it${better ? `: write \`panel: ${better.panel}\`` : ': name another, or correct the position'}`,
          ids: [node.id, panel.id],
          place: node.source.place('panel'),
        },
      ];
    });
  },
};
