import type { Rule } from '../rule.js';
import { ticketName, ticketOf, ticketPlace } from './text.js';

export const ticketNotVerified: Rule = {
  name: 'weight.ticket-not-verified',
  severity: 'warning',
  asks: 'missing',
  duty: 'administrator',
  finds: 'A ticket that cannot be brought to the unladen condition: no condition, no fuel level, or a reading missing.',
  why: 'A weight without what was aboard says little; conditions do not start from it.',
  source: '49 CFR 571.3 (unloaded vehicle weight: full fluids, no cargo, no occupants)',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, readings: {steer: 3500 kg, drive: 5500 kg}}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3500 kg, drive: 5500 kg}}
`,
  },
  check({ figures, model }) {
    return figures.weights.tickets.flatMap((figure) => {
      // A lapsed calibration is told by weight.scale-out-of-calibration.
      if (figure.verified || figure.calibrationLapse !== undefined) return [];
      const stated = ticketOf(model, figure.id)?.condition !== undefined;
      return [
        {
          message: `${ticketName(figure)} is not verified: ${figure.reason}. Write what was aboard, as \`condition: {fuel: 1, fresh: 0, occupants: [driver]}\`, and a reading for each axle`,
          ids: [figure.id],
          place: ticketPlace(model, figure.id, stated ? 'condition' : 'id'),
        } as const,
      ];
    });
  },
};
