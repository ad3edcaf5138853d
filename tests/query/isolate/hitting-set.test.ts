import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cheapestHittingSet } from '../../../src/query/isolate/graph/hitting-set.js';

describe('the cheapest elements of which every set holds one', () => {
  it('cost as little as the best of all subsets, tried one by one', () => {
    const sets = fc.array(fc.uniqueArray(fc.nat(6), { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 7 });
    const costs = fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 7, maxLength: 7 });
    fc.assert(
      fc.property(sets, costs, (drawn, price) => {
        const cost = (one: number): number => price[one] as number;
        const total = (some: readonly number[]): number => some.reduce((sum, one) => sum + cost(one), 0);
        const hits = (some: readonly number[]): boolean => drawn.every((set) => set.some((one) => some.includes(one)));
        const found = cheapestHittingSet(drawn, cost) ?? [];
        expect(hits(found)).toBe(true);
        let least = Infinity;
        for (let mask = 0; mask < 1 << 7; mask++) {
          const some = [0, 1, 2, 3, 4, 5, 6].filter((one) => (mask >> one) & 1);
          if (hits(some)) least = Math.min(least, total(some));
        }
        expect(total(found)).toBe(least);
      }),
      { numRuns: 100 },
    );
  });

  it('are none where there is nothing to hit', () => {
    expect(cheapestHittingSet([], () => 1)).toEqual([]);
  });
});
