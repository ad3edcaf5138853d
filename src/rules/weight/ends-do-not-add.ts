import type { Rule, RuleFinding } from '../rule.js';
import { endsApart } from './readings.js';
import { kg } from './text.js';

export const endsDoNotAdd: Rule = {
  name: 'weight.ends-do-not-add',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'Left and right readings that do not add to the reading of their axle, beyond what the scale can do.',
  why: 'One of the three is wrong, or was taken at another stop.',
  source: 'JCGM 100:2008 5.1.2 (root sum of squares, k = 2)',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: {left: 1750 kg, right: 1750 kg, axle: 3700 kg}, drive: 5500 kg}}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: {left: 1750 kg, right: 1750 kg, axle: 3510 kg}, drive: 5500 kg}}
`,
  },
  check({ model }) {
    return model.shell.tickets.flatMap((ticket) =>
      Object.entries(ticket.readings).flatMap(([axle, reading]): RuleFinding[] => {
        const apart = endsApart(model, ticket, reading);
        if (!apart || Math.abs(apart.kg) <= apart.mayBeKg + 1e-6) return [];
        return [
          {
            message: `Ticket ${ticket.id}: ends of axle ${axle} add to ${kg(model, reading.totalKg + apart.kg)}, expected ${kg(model, reading.totalKg)} as read for the axle, within ${kg(model, apart.mayBeKg)}: read the ticket again, or weigh again`,
            ids: [ticket.id, axle],
            place: ticket.source.place('readings', axle),
          },
        ];
      }),
    );
  },
};
