import { describe, expect, it } from 'vitest';
import type { Bounds } from '../../src/geometry/box.js';
import { pairsNear } from '../../src/geometry/pairs.js';

/** Boxes 40 wide in a row, 60 apart; `count.reads` is how often any of them was looked at. */
function row(length: number, count: { reads: number }): readonly Bounds[] {
  return Array.from({ length }, (_, i) => {
    const min = [i * 60, 0, 0] as const;
    return {
      get min() {
        count.reads += 1;
        return min;
      },
      max: [i * 60 + 40, 100, 100],
    };
  });
}

function readsFor(length: number): number {
  const count = { reads: 0 };
  pairsNear(row(length, count), 3);
  return count.reads;
}

describe('pairs that come near each other', () => {
  it('are found once each, the lower number first, whatever the order along the axis', () => {
    const at = (x: number): Bounds => ({ min: [x, 0, 0], max: [x + 10, 10, 10] });
    expect(pairsNear([at(100), at(12), at(0), at(89)], 3)).toEqual([
      [0, 3],
      [1, 2],
    ]);
  });
  it('are found without looking at every box beside every other', () => {
    // Sorting reads a little more than twice for twice as many; every pair would read four times as many.
    expect(readsFor(4000) / readsFor(2000)).toBeLessThan(2.5);
  });
});
