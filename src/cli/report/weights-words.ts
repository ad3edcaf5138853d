import type { Weights } from '../../compute/weights/types.js';

/** `scale tickets T-8 and T-9 together, wheel ends from T-8`. */
export function ticketWords({ basisTicket, basisTickets, endTickets }: Weights): string {
  const many = basisTickets.length > 1;
  const tickets = many ? `scale tickets ${listed(basisTickets)} together` : `scale ticket ${basisTicket}`;
  const elsewhere = endTickets.length > 0 && !(endTickets.length === 1 && endTickets[0] === basisTicket && !many);
  return elsewhere ? `${tickets}, wheel ends from ${listed(endTickets)}` : tickets;
}

const listed = (ids: readonly string[]): string =>
  ids.length > 1 ? `${ids.slice(0, -1).join(', ')} and ${ids.at(-1)}` : (ids[0] ?? '');

/** In what loading each axle has the least left, one sentence for axles that share it. */
export function leastIn({ budget, notLoadedWith }: Weights): readonly string[] {
  const words = [...new Set(budget.map((one) => one.condition))];
  const lines = words.map((condition) => {
    const axles = budget.filter((one) => one.condition === condition).map((one) => one.axle);
    return `The least is left on ${listed(axles)} with ${condition}.`;
  });
  return [
    ...lines,
    ...(notLoadedWith.length > 0
      ? [`Not counted: ${notLoadedWith.join('; ')}. There an axle is over before any bay is loaded.`]
      : []),
  ];
}
