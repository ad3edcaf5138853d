import type { Rule, RuleFinding } from '../rule.js';
import { endsApart, GROSS_LIMIT, grossApart } from './readings.js';
import { kg, ticketOf, ticketPlace } from './text.js';

export const readingsDisagree: Rule = {
  name: 'weight.readings-disagree',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'Wheel, axle and gross readings of one ticket that do not agree within what the scale can do.',
  why: 'One of them is a slip; which one shows by how badly each fits the others.',
  source: 'weighted least squares, largest normalised residual beyond 3.29 (0.1 %, normal distribution)',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: {left: 1750 kg, right: 1750 kg, axle: 3510 kg}, drive: {left: 2750 kg, right: 2750 kg, axle: 5490 kg}}, gross: 9080 kg}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: {left: 1750 kg, right: 1750 kg, axle: 3510 kg}, drive: {left: 2750 kg, right: 2750 kg, axle: 5490 kg}}, gross: 9010 kg}
`,
  },
  check({ figures, model }) {
    return figures.weights.tickets.flatMap(({ id, reconciled }): RuleFinding[] => {
      const ticket = ticketOf(model, id);
      if (!reconciled || reconciled.agree || !ticket) return [];
      const apart = grossApart(model, ticket);
      const told =
        (apart !== undefined && Math.abs(apart) > GROSS_LIMIT * (ticket.grossKg ?? 0)) ||
        Object.values(ticket.readings).some((reading) => {
          const ends = endsApart(model, ticket, reading);
          return ends !== undefined && Math.abs(ends.kg) > ends.mayBeKg + 1e-6;
        });
      if (told) return [];
      // Where any of them may be the slip, the trade's 1 % of weight.gross-differs is the measure.
      if (reconciled.suspects.length === reconciled.readings.length) return [];
      const suspects = reconciled.readings.filter((one) => reconciled.suspects.includes(one.name));
      const said = suspects.map((one) => `${one.name} read ${kg(model, one.readKg)}, by the others ${kg(model, one.adjustedKg)}`);
      return [
        {
          message: `Readings of ticket ${id} do not agree, expected them to within what the scale can do: ${said.join('; or ')}. Read the ticket again, or weigh again`,
          ids: [id],
          place: ticketPlace(model, id, 'readings'),
        },
      ];
    });
  },
};
