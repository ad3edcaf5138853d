import { type Bounds, grow, overlap } from './box.js';

/**
 * Every pair of bounds that come within `slack` of each other along all three axes, each once, lower number first.
 * Sorted sweep along x: for each, only those are looked at that start before it ends.
 */
export function pairsNear(bounds: readonly Bounds[], slack: number): readonly (readonly [number, number])[] {
  const order = bounds.map((_, i) => i).sort((a, b) => (bounds[a] as Bounds).min[0] - (bounds[b] as Bounds).min[0]);
  const pairs: [number, number][] = [];
  order.forEach((i, place) => {
    const own = grow(bounds[i] as Bounds, slack);
    for (let next = place + 1; next < order.length; next++) {
      const j = order[next] as number;
      const other = bounds[j] as Bounds;
      if (other.min[0] > own.max[0]) break;
      if (overlap(own, other)) pairs.push(i < j ? [i, j] : [j, i]);
    }
  });
  return pairs.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
}
