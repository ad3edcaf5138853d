import { axleGroups } from '../../compute/weights/axle-groups.js';
import type { Severity } from '../../finding.js';
import type { Rule, RuleFinding } from '../rule.js';
import { ticketName, ticketOf, ticketPlace } from './text.js';

export const groupApart: Rule = {
  name: 'weight.group-apart',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'A ticket that the conditions start from, for axles that share load, whose wheels were not on the scale together and level. A note if the ticket does not say.',
  why: 'With one axle of a group on a pad and the other on the ground, the pad takes or gives load: gross weights came out 4 to 6 % wrong.',
  source: 'common practice, no source',
  examples: {
    given: `
# shell.yaml
shell: X-1
title: Example coach
tanks: [{id: FUEL, contents: diesel, capacity: 200 L, at: [2 m, 0.9 m, 0 m]}]
chassis:
  gvwr: 20000 kg
  axles:
    - {id: steer, x: 0 m, gawr: 6000 kg}
    - {id: drive, x: 5 m, gawr: 9000 kg}
    - {id: tag, x: 6.3 m, gawr: 6000 kg, share: {with: drive, fraction: 0.4}}
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3000 kg, drive: 3600 kg, tag: 2400 kg}, together: axle}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3000 kg, drive: 3600 kg, tag: 2400 kg}, together: group}
`,
  },
  check({ figures, model }) {
    const figure = figures.weights.tickets.find((one) => one.id === figures.weights.basisTicket);
    const ticket = figure && ticketOf(model, figure.id);
    if (!figure || !ticket) return [];
    const grouped = axleGroups(model.shell.chassis.axles);
    const shared = 'groups' in grouped ? grouped.groups.find(({ axles }) => axles.length > 1) : undefined;
    if (!shared || ticket.together === 'group' || ticket.together === 'vehicle') return [];
    const group = shared.axles.map(({ axle }) => axle.id).join(' and ');
    const finding = (severity: Severity, message: string): readonly RuleFinding[] => [
      { severity, message, ids: [ticket.id], place: ticketPlace(model, ticket.id, 'together') },
    ];
    return ticket.together === undefined
      ? finding(
          'note',
          `${ticketName(figure)} does not say whether ${group} were on the scale together, expected \`together: group\`, \`vehicle\`, \`axle\` or \`wheel\``,
        )
      : finding(
          'warning',
          `${ticketName(figure)} was weighed one ${ticket.together} at a time though ${group} share load, expected all their wheels on the scale together and level: weigh again`,
        );
  },
};
