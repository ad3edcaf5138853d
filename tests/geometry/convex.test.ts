import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, boxBounds, nearestInBox } from '../../src/geometry/box.js';
import { contact } from '../../src/geometry/contact.js';
import { convexOfBox, convexOfPlate } from '../../src/geometry/convex.js';
import { convexDistance, separation } from '../../src/geometry/convex-distance.js';
import { pairsNear } from '../../src/geometry/pairs.js';
import { add, cross, distance, dot, scale, subtract, unit, type Vec3 } from '../../src/geometry/vector.js';

const upright = (center: Vec3, half: Vec3): Box => ({
  center,
  half,
  axes: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
});

const axisWords = fc.tuple(
  fc.double({ min: -1, max: 1, noNaN: true }),
  fc.double({ min: -1, max: 1, noNaN: true }),
  fc.double({ min: -1, max: 1, noNaN: true }),
) as fc.Arbitrary<Vec3>;
const sizes = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: 1, max: 60, noNaN: true }))) as unknown as fc.Arbitrary<Vec3>;
const places = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -90, max: 90, noNaN: true }))) as unknown as fc.Arbitrary<Vec3>;
const boxes: fc.Arbitrary<Box> = fc
  .tuple(places, sizes, axisWords, axisWords)
  .filter(([, , a, b]) => distance(a, [0, 0, 0]) > 0.1 && distance(cross(unit(a), unit(b)), [0, 0, 0]) > 0.1)
  .map(([center, half, a, b]) => {
    const u = unit(a);
    const w = unit(cross(u, b));
    return { center, half, axes: [u, cross(w, u), w] as const };
  });

/**
 * A second method: from a point of one box to the nearest of the other and back, over and over. Projections between convex sets
 * close in on their distance from above (W. Cheney and A. A. Goldstein, Proceedings of the AMS 10, 1959); the gap between the two
 * shadows on the line that joins the points bounds it from below.
 */
function byProjections(a: Box, b: Box): { readonly least: number; readonly most: number } {
  let onA = a.center;
  let onB = b.center;
  for (let round = 0; round < 400; round++) {
    onB = nearestInBox(onA, b);
    onA = nearestInBox(onB, a);
  }
  const along = unit(subtract(onB, onA));
  const reach = (box: Box): number =>
    box.axes.reduce((sum, axis, k) => sum + Math.abs(dot(axis, along)) * (box.half[k] as number), 0);
  return { least: dot(subtract(b.center, a.center), along) - reach(a) - reach(b), most: distance(onA, onB) };
}

describe('distance of boxes', () => {
  it.each([
    ['face to face', [100, 0, 0], [10, 10, 10], 80],
    ['edge to edge', [30, 40, 0], [10, 10, 10], Math.hypot(10, 20)],
    ['corner to corner', [30, 40, 50], [10, 10, 10], Math.hypot(10, 20, 30)],
    ['touching', [20, 0, 0], [10, 10, 10], 0],
    ['one inside the other', [0, 0, 0], [2, 2, 2], 0],
  ] as const)('%s', (_name, center, half, expected) => {
    const a = convexOfBox(upright([0, 0, 0], [10, 10, 10]));
    expect(convexDistance(a, convexOfBox(upright(center, half)))).toBeCloseTo(expected, 9);
  });

  it('crossed edges: two square bars on edge, at right angles, 5 apart', () => {
    const r = Math.SQRT1_2;
    const below: Box = {
      center: [0, 0, 0],
      half: [50, 10, 10],
      axes: [
        [1, 0, 0],
        [0, r, r],
        [0, -r, r],
      ],
    };
    const above: Box = {
      center: [0, 0, 20 * Math.SQRT2 + 5],
      half: [10, 50, 10],
      axes: [
        [r, 0, -r],
        [0, 1, 0],
        [r, 0, r],
      ],
    };
    expect(convexDistance(convexOfBox(below), convexOfBox(above))).toBeCloseTo(5, 9);
  });

  it('agrees with alternating projections', () => {
    let runs = 0;
    let tight = 0;
    fc.assert(
      fc.property(boxes, boxes, (a, b) => {
        const exact = convexDistance(convexOfBox(a), convexOfBox(b));
        const { least, most } = byProjections(a, b);
        runs += 1;
        if (most - least < 0.1) tight += 1;
        expect(exact).toBeLessThanOrEqual(most + 1e-6);
        expect(exact).toBeGreaterThanOrEqual(least - 1e-6);
      }),
      { numRuns: 150, endOnFailure: true },
    );
    // Where the two bounds are apart the check says little: most must be tight.
    expect(tight / runs).toBeGreaterThan(0.5);
  });

  it('is the same both ways, never under the separation, and grows with the way moved apart', () => {
    fc.assert(
      fc.property(boxes, boxes, (a, b) => {
        const [one, other] = [convexOfBox(a), convexOfBox(b)];
        const gap = convexDistance(one, other);
        expect(convexDistance(other, one)).toBeCloseTo(gap, 9);
        expect(gap).toBeGreaterThanOrEqual(separation(one, other) - 1e-9);
        const away = unit(subtract(b.center, a.center));
        const moved = convexOfBox({ ...b, center: add(b.center, scale(away, 500)) });
        expect(convexDistance(one, moved)).toBeGreaterThan(gap);
      }),
      { numRuns: 100, endOnFailure: true },
    );
  });
});

describe('plates', () => {
  const ell: Vec3[] = [
    [0, 0, 0],
    [60, 0, 0],
    [60, 20, 0],
    [20, 20, 0],
    [20, 50, 0],
    [0, 50, 0],
  ];

  it('an L falls into triangles that fill it; a rectangle stays one', () => {
    const parts = convexOfPlate(ell, 5);
    expect(parts.length).toBe(4);
    const areas = parts.map(
      ({ corners: [a, b, c] }) => distance(cross(subtract(b as Vec3, a as Vec3), subtract(c as Vec3, a as Vec3)), [0, 0, 0]) / 2,
    );
    expect(areas.reduce((sum, area) => sum + area, 0)).toBeCloseTo(60 * 20 + 20 * 30, 9);
    expect(convexOfPlate(ell.slice(0, 3), 5).length).toBe(1);
  });

  it('what stands in the notch of an L is as far off as the notch is wide', () => {
    const peg = convexOfBox(upright([40, 40, 0], [5, 5, 2]));
    const gap = Math.min(...convexOfPlate(ell, 5).map((part) => convexDistance(part, peg)));
    expect(gap).toBeCloseTo(15, 9);
  });

  it('their faces look outward, whichever way the outline runs', () => {
    for (const outline of [ell, [...ell].reverse()]) {
      for (const { faces, corners } of convexOfPlate(outline, 5)) {
        const middle = scale(
          corners.reduce<Vec3>((sum, corner) => add(sum, corner), [0, 0, 0]),
          1 / corners.length,
        );
        for (const face of faces) expect(dot(face.normal, subtract(face.corners[0] as Vec3, middle))).toBeGreaterThan(0);
      }
    }
  });

  it('an outline without area is none', () => {
    expect(
      convexOfPlate(
        [
          [0, 0, 0],
          [1, 0, 0],
          [2, 0, 0],
        ],
        5,
      ),
    ).toEqual([]);
  });
});

describe('contact', () => {
  it('a post on a rail meets it in the post’s foot', () => {
    const rail = convexOfBox(upright([0, 0, 0], [500, 25, 25]));
    const post = convexOfBox(upright([200, 0, 325], [20, 20, 300]));
    const place = contact(rail, post, 0.01);
    expect(place?.middle[0]).toBeCloseTo(200, 6);
    expect(place?.middle[1]).toBeCloseTo(0, 6);
    expect(place?.middle[2]).toBeCloseTo(25, 1);
    // both surfaces of the foot, 40 × 40 each
    expect((place?.area as number) / (2 * 40 * 40)).toBeCloseTo(1, 2);
  });

  it('is none where the two are further apart than both grow', () => {
    const a = convexOfBox(upright([0, 0, 0], [10, 10, 10]));
    expect(contact(a, convexOfBox(upright([25, 0, 0], [10, 10, 10])), 2)).toBeUndefined();
    expect(contact(a, convexOfBox(upright([23, 0, 0], [10, 10, 10])), 2)).toBeDefined();
  });
});

describe('pairs', () => {
  it('are those that a look at every pair finds', () => {
    fc.assert(
      fc.property(fc.array(boxes, { maxLength: 25 }), fc.double({ min: 0, max: 10, noNaN: true }), (list, slack) => {
        const bounds = list.map(boxBounds);
        const every: [number, number][] = [];
        bounds.forEach((a, i) => {
          bounds.forEach((b, j) => {
            const near = [0, 1, 2].every(
              (k) => (a.min[k] as number) - slack <= (b.max[k] as number) && (b.min[k] as number) <= (a.max[k] as number) + slack,
            );
            if (i < j && near) every.push([i, j]);
          });
        });
        expect(pairsNear(bounds, slack)).toEqual(every);
      }),
    );
  });
});
