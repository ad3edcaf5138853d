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
  why: 'The conditions then stand on a weight that the vehicle no longer has, and on records for the rest.',
  source: 'common practice, no source',
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
