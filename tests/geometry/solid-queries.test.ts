import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, boxBetween, boxBounds, clipToBox, isInBox, nearestInBox } from '../../src/geometry/box.js';
import { facet, nearestOnFacet, throughFacet } from '../../src/geometry/facet.js';
import { grid } from '../../src/geometry/grid.js';
import { distance, lerp, type Vec3 } from '../../src/geometry/vector.js';

const number = fc.integer({ min: -40, max: 40 });
const place = fc.tuple(number, number, number) as fc.Arbitrary<Vec3>;
const size = fc.integer({ min: 1, max: 20 });
const SIN = 0.6;
const COS = 0.8;
/** A box turned about z by the angle of a 3–4–5 triangle, so that its axes are exact. */
const turned = fc.tuple(place, size, size, size).map(([center, a, b, c]): Box => {
  return {
    center,
    half: [a, b, c],
    axes: [
      [COS, SIN, 0],
      [-SIN, COS, 0],
      [0, 0, 1],
    ],
  };
});
const shares = Array.from({ length: 201 }, (_, i) => i / 200);

describe('box', () => {
  it('is nearest at a face, an edge, a corner, or is the point itself within', () => {
    const box = boxBetween([0, 0, 0], [10, 20, 30]);
    expect(nearestInBox([5, 5, 40], box)).toEqual([5, 5, 30]);
    expect(nearestInBox([-3, 24, 15], box)).toEqual([0, 20, 15]);
    expect(nearestInBox([-1, -2, -2], box)).toEqual([0, 0, 0]);
    expect(nearestInBox([1, 2, 3], box)).toEqual([1, 2, 3]);
  });

  it('clips a segment to exactly the places of it that are inside', () => {
    fc.assert(
      fc.property(turned, place, place, (box, from, to) => {
        const part = clipToBox(from, to, box);
        for (const t of shares) {
          const at = lerp(from, to, t);
          if (isInBox(at, box, -1e-6)) expect(part && part[0] <= t && t <= part[1]).toBe(true);
          if (part && t > part[0] && t < part[1]) expect(isInBox(at, box, 1e-6)).toBe(true);
        }
      }),
    );
  });

  it('lies in its bounds', () => {
    fc.assert(
      fc.property(turned, place, (box, point) => {
        const { min, max } = boxBounds(box);
        nearestInBox(point, box).forEach((value, k) => {
          expect(value).toBeGreaterThanOrEqual((min[k] as number) - 1e-9);
          expect(value).toBeLessThanOrEqual((max[k] as number) + 1e-9);
        });
      }),
    );
  });
});

describe('facet', () => {
  // GEO-18: the L shape, here in the plane z = 7
  const ell = facet([
    [0, 0, 7],
    [6, 0, 7],
    [6, 2, 7],
    [2, 2, 7],
    [2, 5, 7],
    [0, 5, 7],
  ]);
  if (!ell) throw new Error('the L shape has an area');

  it('is met over its area only', () => {
    expect(throughFacet([1, 4, 0], [1, 4, 14], ell)).toBeCloseTo(0.5, 12);
    expect(throughFacet([4, 4, 0], [4, 4, 14], ell)).toBeUndefined();
    expect(throughFacet([1, 4, 0], [1, 4, 6], ell)).toBeUndefined();
  });

  it('is open at its holes', () => {
    const holed = facet(
      [
        [0, 0, 0],
        [10, 0, 0],
        [10, 10, 0],
        [0, 10, 0],
      ],
      [
        [
          [4, 4, 0],
          [6, 4, 0],
          [6, 6, 0],
          [4, 6, 0],
        ],
      ],
    );
    if (!holed) throw new Error('it has an area');
    expect(throughFacet([5, 5, -1], [5, 5, 1], holed)).toBeUndefined();
    expect(throughFacet([3, 5, -1], [3, 5, 1], holed)).toBe(0.5);
    expect(distance(nearestOnFacet([5, 5.5, 0], holed), [5, 6, 0])).toBeLessThan(1e-12);
  });

  it('is nowhere nearer than the place given, tried on a mesh of it', () => {
    fc.assert(
      fc.property(place, (point) => {
        const near = distance(point, nearestOnFacet(point, ell));
        for (let x = 0; x <= 6; x += 0.25) {
          for (let y = 0; y <= (x <= 2 ? 5 : 2); y += 0.25) expect(near).toBeLessThanOrEqual(distance(point, [x, y, 7]) + 1e-9);
        }
      }),
    );
  });
});

describe('grid', () => {
  it('finds whatever overlaps, as looking at each thing does', () => {
    const bounds = fc.tuple(place, place).map(([a, b]) => boxBounds(boxBetween(a, b)));
    fc.assert(
      fc.property(fc.array(bounds, { maxLength: 30 }), bounds, (things, asked) => {
        const index = grid(
          things.map((one, i) => ({ index: i, bounds: one })),
          7,
        );
        const found = new Set(index.near(asked));
        things.forEach(({ min, max }, i) => {
          const meets = [0, 1, 2].every(
            (k) => (min[k] as number) <= (asked.max[k] as number) && (max[k] as number) >= (asked.min[k] as number),
          );
          if (meets) expect(found.has(i)).toBe(true);
        });
      }),
    );
  });

  it('bears a thing of a size that only a slip of units makes', () => {
    const index = grid([{ index: 0, bounds: { min: [-1e9, -1e9, -1e9], max: [1e9, 1e9, 1e9] } }], 10);
    expect(index.near({ min: [0, 0, 0], max: [1, 1, 1] })).toEqual([0]);
  });
});
