import type { Rule, RuleFinding } from '../rule.js';
import { GROSS_LIMIT, grossApart } from './readings.js';
import { kg, share } from './text.js';

export const grossDiffers: Rule = {
  name: 'weight.gross-differs',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A ticket whose axles together differ from its gross by more than 1 %.',
  why: 'Axles weighed one after another on a slope, with the brakes on or at another stop do not add.',
  source: '1 % after IMO guidelines on lightweight surveys; for axle scales common practice, no source',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3500 kg, drive: 5500 kg}, gross: 9200 kg}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3500 kg, drive: 5500 kg}, gross: 9010 kg}
`,
  },
  check({ model, figures }) {
    return model.shell.tickets.flatMap((ticket): RuleFinding[] => {
      const apart = grossApart(model, ticket);
      const grossKg = ticket.grossKg ?? 0;
      if (apart === undefined || Math.abs(apart) <= GROSS_LIMIT * grossKg) return [];
      const outlier = figures.weights.tickets.find((one) => one.id === ticket.id)?.reconciled?.outlier;
      const which = outlier === undefined ? '' : `; the reading that does not fit is ${outlier}`;
      return [
        {
          message: `Ticket ${ticket.id}: axles add to ${kg(model, grossKg + apart)}, expected the gross of ${kg(model, grossKg)} within ${share(GROSS_LIMIT)}${which}: weigh again level, brakes off`,
          ids: [ticket.id],
          place: ticket.source.place('gross'),
        },
      ];
    });
  },
};
