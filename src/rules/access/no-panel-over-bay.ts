import type { Rule } from '../rule.js';

export const noPanelOverBay: Rule = {
  name: 'access.no-panel-over-bay',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'A concealed underfloor bay closed by belly panels that no access panel opens onto.',
  why: 'What runs there cannot be looked at without taking the belly down.',
  source: 'common practice, no source',
  examples: {
    given: `
# zones.yaml
- {id: TC, name: belly trough, box: [[0 m, -0.5 m, 0 m], [4 m, 0.5 m, 0.3 m]], closed_by: [BP-1], drains: [[2.9 m, 0 m, 0 m]]}
# panels.yaml
- {id: BP-1, kind: belly, thickness: 2 mm, outline: [[0 m, -0.5 m, 0 m], [4 m, -0.5 m, 0 m], [4 m, 0.5 m, 0 m], [0 m, 0.5 m, 0 m]]}
`,
    fails: `
# no access panel
`,
    passes: `
- {id: AP-1, kind: access, of: BP-1, opening: 300 mm x 300 mm, facing: down, outline: [[0.85 m, -0.15 m, 0 m], [1.15 m, -0.15 m, 0 m], [1.15 m, 0.15 m, 0 m], [0.85 m, 0.15 m, 0 m]]}
`,
  },
  check({ model: { shell }, figures }) {
    const belly = new Set(shell.panels.filter((panel) => panel.panelKind === 'belly').map((panel) => panel.id));
    const opened = new Set(
      Object.values(figures.access.behind).flatMap((items) =>
        items.filter((item) => item.kind === 'zone' && item.reach !== 'beyond').map((item) => item.id),
      ),
    );
    return shell.zones
      .filter((zone) => zone.concealed && zone.closedBy.some((id) => belly.has(id)) && !opened.has(zone.id))
      .map((zone) => ({
        message: `${zone.id} is closed by ${zone.closedBy.join(', ')} and no access panel opens onto it, expected one over every underfloor bay: add an access panel \`of: ${zone.closedBy.find((id) => belly.has(id))}\``,
        ids: [zone.id, ...zone.closedBy],
        place: zone.source.place('closed_by'),
      }));
  },
};
