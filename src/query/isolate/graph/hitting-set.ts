/** Sets tried before it gives up; far more than any coach asks for. */
const MOST_TRIED = 200_000;

/**
 * The cheapest elements of which every set holds one, by branch and bound: exact. Undefined where too many sets would have to be
 * tried. `cost` is above zero.
 */
export function cheapestHittingSet(
  sets: readonly (readonly number[])[],
  cost: (element: number) => number,
): readonly number[] | undefined {
  let best: readonly number[] | undefined;
  let bestCost = Infinity;
  let tried = 0;
  const visit = (chosen: readonly number[], soFar: number, barred: ReadonlySet<number>): void => {
    if (++tried > MOST_TRIED) return;
    const left = sets
      .filter((set) => !set.some((one) => chosen.includes(one)))
      .map((set) => set.filter((one) => !barred.has(one)))
      .sort((a, b) => a.length - b.length);
    if (left.length === 0) {
      if (soFar < bestCost) [best, bestCost] = [chosen, soFar];
      return;
    }
    if (soFar + leastFor(left, cost) >= bestCost) return;
    const without = new Set(barred);
    for (const one of [...(left[0] as readonly number[])].sort((a, b) => cost(a) - cost(b))) {
      visit([...chosen, one], soFar + cost(one), without);
      without.add(one);
    }
  };
  visit([], 0, new Set());
  return tried > MOST_TRIED ? undefined : best;
}

/** No hitting set costs less: sets that share no element each want one of their own. */
function leastFor(sets: readonly (readonly number[])[], cost: (element: number) => number): number {
  const used = new Set<number>();
  let least = 0;
  for (const set of sets) {
    if (set.some((one) => used.has(one))) continue;
    for (const one of set) used.add(one);
    least += set.reduce((low, one) => Math.min(low, cost(one)), Infinity);
  }
  return least;
}
