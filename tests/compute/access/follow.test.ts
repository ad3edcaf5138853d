import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Cover, follow } from '../../../src/compute/access/follow.js';

const cover = (panel: string, pieces: readonly number[], cost = 1): Cover => ({ panel, pieces: new Set(pieces), cost });

describe('fewest panels to follow a run', () => {
  it('takes two where greed alone would take three', () => {
    // Greedy starts with the widest (2–5) and then needs both ends; the improvement finds the two halves.
    const covers = [cover('WIDE', [2, 3, 4, 5]), cover('FRONT', [0, 1, 2, 3].slice(0, 4)), cover('REAR', [4, 5, 6])];
    expect(follow(covers)).toEqual(['FRONT', 'REAR']);
  });

  it('prefers few fasteners where the count of panels is the same', () => {
    expect(follow([cover('MANY', [0, 1], 1.6), cover('FEW', [0, 1], 1.1)])).toEqual(['FEW']);
  });

  it('gives nothing for a run that no panel lays open', () => {
    expect(follow([])).toEqual([]);
  });

  it('lays every piece open, holds no needless panel, and stays within the bound of greedy set cover', () => {
    const covers = fc.array(
      fc.tuple(fc.uniqueArray(fc.nat(9), { minLength: 1, maxLength: 6 }), fc.integer({ min: 10, max: 20 })),
      {
        minLength: 1,
        maxLength: 8,
      },
    );
    fc.assert(
      fc.property(covers, (drawn) => {
        const all = drawn.map(([pieces, cost], i) => cover(`P${i}`, pieces, cost / 10));
        const chosen = follow(all).map((id) => all.find((one) => one.panel === id) as Cover);
        const pieces = new Set(all.flatMap((one) => [...one.pieces]));
        const opens = (some: readonly Cover[]): boolean =>
          [...pieces].every((piece) => some.some((one) => one.pieces.has(piece)));
        expect(opens(chosen)).toBe(true);
        for (const one of chosen) expect(opens(chosen.filter((other) => other !== one))).toBe(false);
        // Every subset tried: the cheapest that opens all. Chvátal 1979: greedy is at most H(largest set) times that.
        const cost = (some: readonly Cover[]): number => some.reduce((sum, one) => sum + one.cost, 0);
        let least = Infinity;
        for (let mask = 0; mask < 1 << all.length; mask++) {
          const some = all.filter((_, i) => (mask >> i) & 1);
          if (opens(some)) least = Math.min(least, cost(some));
        }
        const widest = Math.max(...all.map((one) => one.pieces.size));
        const harmonic = Array.from({ length: widest }, (_, i) => 1 / (i + 1)).reduce((a, b) => a + b, 0);
        expect(cost(chosen)).toBeGreaterThanOrEqual(least - 1e-9);
        expect(cost(chosen)).toBeLessThanOrEqual(harmonic * least + 1e-9);
      }),
    );
  });
});
