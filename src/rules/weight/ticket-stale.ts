import type { Rule } from '../rule.js';
import { kg, share, ticketName, ticketPlace } from './text.js';

/** Fraction of the weighed total. Common practice, no source. */
const LIMIT = 0.005;

export const ticketStale: Rule = {
  name: 'weight.ticket-stale',
  severity: 'warning',
  asks: 'missing',
  duty: 'administrator',
  finds: 'The newest verified ticket is older than mass that was put on since, by more than 0.5 % of the total.',
  why: 'The conditions then start from a weight that the vehicle no longer has.',
  source: 'common practice, no source',
  examples: {
    given: `
# weights.yaml
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3500 kg, drive: 5500 kg}}
# components.yaml
`,
    fails: `
- {id: CMP-1, name: Generator, mass: 180 kg, at: [3 m, 0 m, 0.3 m], basis: weighed, date: 2026-06-11}
`,
    passes: `
- {id: CMP-1, name: Generator, mass: 180 kg, at: [3 m, 0 m, 0.3 m], basis: weighed, date: 2026-04-11}
`,
  },
  check({ figures, model }) {
    const { basisTicket, tickets } = figures.weights;
    const figure = tickets.find((one) => one.id === basisTicket);
    const totalKg = figure?.normalisedKg ?? 0;
    if (!figure || totalKg <= 0 || figure.addedSinceKg <= LIMIT * totalKg) return [];
    return [
      {
        message: `${ticketName(figure)} is stale: ${kg(model, figure.addedSinceKg)} (${share(figure.addedSinceKg / totalKg)}) was put on since, expected at most ${share(LIMIT)} of ${kg(model, totalKg)}. Weigh again`,
        ids: [figure.id],
        place: ticketPlace(model, figure.id, 'date'),
      },
    ];
  },
};
