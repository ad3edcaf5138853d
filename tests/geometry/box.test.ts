import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Bounds, type Box, boundsOf, boxBetween, boxBounds, grow, isInBox, overlap } from '../../src/geometry/box.js';
import type { Vec3 } from '../../src/geometry/vector.js';

const AXES = [0, 1, 2] as const;
/** Few different coordinates, so that faces touch often. */
const crowded = fc.tuple(...AXES.map(() => fc.integer({ min: -2, max: 2 }))) as unknown as fc.Arbitrary<Vec3>;

/** The whole places from one corner of some bounds to the other. */
function placesIn({ min, max }: Bounds): readonly string[] {
  const found: string[] = [];
  for (let x = min[0]; x <= max[0]; x++) {
    for (let y = min[1]; y <= max[1]; y++) for (let z = min[2]; z <= max[2]; z++) found.push(`${x} ${y} ${z}`);
  }
  return found;
}

describe('bounds', () => {
  it('hold every point, and every face of them holds one', () => {
    fc.assert(
      fc.property(fc.array(crowded, { minLength: 1, maxLength: 6 }), (points) => {
        const { min, max } = boundsOf(points);
        for (const k of AXES) {
          const sorted = points.map((point) => point[k]).sort((a, b) => a - b);
          expect([min[k], max[k]]).toEqual([sorted[0], sorted.at(-1)]);
        }
        expect([min.length, max.length]).toEqual([3, 3]);
      }),
    );
  });

  it('of nothing overlap nothing', () => {
    const none = boundsOf([]);
    expect(overlap(none, { min: [-9, -9, -9], max: [9, 9, 9] })).toBe(false);
    expect(overlap({ min: [-9, -9, -9], max: [9, 9, 9] }, none)).toBe(false);
  });

  it('overlap where they have a place in common, a touching face, edge or corner too', () => {
    fc.assert(
      fc.property(crowded, crowded, crowded, crowded, (a, b, c, d) => {
        const [one, other] = [boundsOf([a, b]), boundsOf([c, d])];
        const places = new Set(placesIn(one));
        expect(overlap(one, other)).toBe(placesIn(other).some((place) => places.has(place)));
      }),
      { numRuns: 500 },
    );
  });

  it('grow on every side', () => {
    expect(grow({ min: [1, 2, 3], max: [4, 5, 6] }, 10)).toEqual({ min: [-9, -8, -7], max: [14, 15, 16] });
  });
});

describe('a box', () => {
  it('between two corners, whichever are given, is bounded by them', () => {
    fc.assert(
      fc.property(crowded, crowded, (a, b) => {
        expect(boxBounds(boxBetween(a, b))).toEqual(boundsOf([a, b]));
      }),
    );
  });

  it('turned by the angle of a 3–4–5 triangle reaches as far as its corners', () => {
    const turned: Box = {
      center: [100, 200, 300],
      half: [50, 25, 10],
      axes: [
        [0.8, 0.6, 0],
        [-0.6, 0.8, 0],
        [0, 0, 1],
      ],
    };
    // 50 · 0.8 + 25 · 0.6 = 55 along x, 50 · 0.6 + 25 · 0.8 = 50 along y
    const { min, max } = boxBounds(turned);
    expect(min.map((mm) => mm.toFixed(9))).toEqual([45, 150, 290].map((mm) => mm.toFixed(9)));
    expect(max.map((mm) => mm.toFixed(9))).toEqual([155, 250, 310].map((mm) => mm.toFixed(9)));
  });

  it('holds its faces, and what is at most the slack outside one', () => {
    const box = boxBetween([0, 0, 0], [10, 20, 30]);
    for (const k of AXES) {
      const at = (out: number): Vec3 =>
        [5, 10, 15].map((mm, i) => (i === k ? ([10, 20, 30][k] as number) + out : mm)) as unknown as Vec3;
      expect(isInBox(at(0), box)).toBe(true);
      expect(isInBox(at(0.5), box)).toBe(false);
      expect(isInBox(at(0.5), box, 0.5)).toBe(true);
      expect(isInBox(at(0.75), box, 0.5)).toBe(false);
      expect(isInBox(at(-0.25), box, -0.5)).toBe(false);
      expect(isInBox(at(-0.5), box, -0.5)).toBe(true);
    }
  });
});
