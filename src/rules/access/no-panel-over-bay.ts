import type { Rule } from '../rule.js';

export const noPanelOverBay: Rule = {
  name: 'access.no-panel-over-bay',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'A concealed underfloor bay closed by belly panels that no access panel opens onto.',
  why: 'What runs there cannot be looked at without taking the belly down.',
  source: 'common practice, no source',
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
