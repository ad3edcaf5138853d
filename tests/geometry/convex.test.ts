import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, boundsOf, nearestInBox } from '../../src/geometry/box.js';
import { contact, spans } from '../../src/geometry/contact.js';
import { type Convex, convexOfBox, convexOfPlate } from '../../src/geometry/convex.js';
import { convexDistance, separation } from '../../src/geometry/convex-distance.js';
import { pairsNear } from '../../src/geometry/pairs.js';
import { add, cross, distance, dot, norm, scale, subtract, unit, type Vec3 } from '../../src/geometry/vector.js';

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
  .filter(([, , a, b]) => Math.min(norm(a), norm(b)) > 0.1 && distance(cross(unit(a), unit(b)), [0, 0, 0]) > 0.1)
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

/** How far each face of a solid stands out from its middle, along its own normal: all above 0 where faces look outward. */
function standsOut({ faces, corners }: Convex): readonly number[] {
  const middle = scale(
    corners.reduce<Vec3>((sum, corner) => add(sum, corner), [0, 0, 0]),
    1 / corners.length,
  );
  return faces.map(({ normal, corners: [first] }) => dot(normal, subtract(first as Vec3, middle)));
}

describe('a box as a solid', () => {
  it('has six faces that look outward, each a half size out, of axes of either hand', () => {
    fc.assert(
      fc.property(boxes, fc.boolean(), ({ center, half, axes: [a, b, c] }, mirrored) => {
        const solid = convexOfBox({ center, half, axes: [a, b, mirrored ? scale(c, -1) : c] });
        const sorted = (sizes: readonly number[]): readonly string[] =>
          [...sizes].sort((x, y) => x - y).map((mm) => mm.toFixed(6));
        expect(sorted(standsOut(solid))).toEqual(sorted([...half, ...half]));
        // Euler: corners − edges + faces = 2
        expect([solid.corners.length, solid.edges.length, solid.faces.length]).toEqual([8, 12, 6]);
        const along = solid.edges.map(([from, to]) => distance(from, to));
        expect(along.reduce((sum, mm) => sum + mm, 0)).toBeCloseTo(8 * (half[0] + half[1] + half[2]), 6);
      }),
    );
  });
});

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

  it('corner over face: a cube stood on its corner, 1 above a slab', () => {
    const slab = convexOfBox(upright([0, 0, 0], [50, 50, 10]));
    // Along z it reaches (2 + 1 + 2) / 3 of its half size.
    const cube = (z: number): Convex =>
      convexOfBox({
        center: [7, -4, z],
        half: [10, 10, 10],
        axes: [
          [2 / 3, -1 / 3, 2 / 3],
          [2 / 3, 2 / 3, -1 / 3],
          [-1 / 3, 2 / 3, 2 / 3],
        ],
      });
    const standing = 10 + 50 / 3;
    for (const [one, other] of [
      [slab, cube(standing + 1)],
      [cube(standing + 1), slab],
    ] as const) {
      expect(separation(one, other)).toBeCloseTo(1, 9);
      expect(convexDistance(one, other)).toBeCloseTo(1, 9);
    }
    expect(separation(slab, cube(standing - 2))).toBeCloseTo(-2, 9);
    expect(convexDistance(slab, cube(standing - 2))).toBe(0);
  });

  it('overlap is told by how little would part them', () => {
    const a = convexOfBox(upright([0, 0, 0], [10, 10, 10]));
    expect(separation(a, convexOfBox(upright([16, 3, 2], [10, 10, 10])))).toBeCloseTo(-4, 9);
    expect(separation(a, convexOfBox(upright([16, 30, 2], [10, 10, 10])), 5)).toBeGreaterThan(5);
    expect(separation(a, convexOfBox(upright([16, 30, 2], [10, 10, 10])), 12)).toBeCloseTo(10, 9);
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
      for (const part of convexOfPlate(outline, 5)) for (const out of standsOut(part)) expect(out).toBeGreaterThan(0);
    }
  });

  it('have half of their thickness on each side of the outline', () => {
    for (const { corners } of convexOfPlate(ell, 5)) {
      expect([...new Set(corners.map(([, , z]) => z.toFixed(9)))].sort()).toEqual(['-2.500000000', '2.500000000']);
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

describe('a contact', () => {
  const block = convexOfBox(upright([50, 50, -10], [50, 50, 10]));
  const close = (found: Vec3 | undefined, expected: Vec3): void => {
    expect(found).toBeDefined();
    for (const k of [0, 1, 2] as const) expect(found?.[k]).toBeCloseTo(expected[k], 2);
  };

  it('has its middle where the shared area has, which is not the middle of what it spans', () => {
    const [gusset] = convexOfPlate(
      [
        [0, 0, 3],
        [60, 0, 3],
        [0, 30, 3],
      ],
      6,
    );
    const place = contact(block, gusset as Convex, 1e-4);
    // Centroid of a triangle: a third of the way. Both surfaces, 60 · 30 / 2 each.
    close(place?.middle, [20, 10, 0]);
    expect((place?.area as number) / (60 * 30)).toBeCloseTo(1, 2);
    expect(
      spans(place?.corners ?? [], [
        [0, 1, 0],
        [0, 0, 1],
        [1, 0, 0],
      ]).map(Math.round),
    ).toEqual([60, 30, 0]);
  });

  it('spans what its corners span, the widest way first', () => {
    const corners: Vec3[] = [
      [5, -2, 7],
      [8, -1, 7],
      [6, 9, 7],
    ];
    expect(
      spans(corners, [
        [0, 0, 1],
        [1, 0, 0],
        [0, 1, 0],
      ]),
    ).toEqual([11, 3, 0]);
  });

  it('along an edge has no area, and its middle there', () => {
    const edge = contact(block, convexOfBox(upright([130, 50, 10], [30, 20, 10])), 0);
    close(edge?.middle, [100, 50, 0]);
    expect(edge?.area).toBe(0);
  });

  it('is the same place whichever solid is named first, and of one inside the other all of its surface', () => {
    fc.assert(
      fc.property(boxes, boxes, (a, b) => {
        const [one, other] = [convexOfBox(a), convexOfBox(b)];
        const [there, back] = [contact(one, other, 1), contact(other, one, 1)];
        expect(back === undefined).toBe(there === undefined);
        expect(there === undefined).toBe(separation(one, other) > 2);
        if (there && back) {
          expect(back.area / there.area).toBeCloseTo(1, 6);
          expect(distance(back.middle, there.middle)).toBeLessThan(1e-6);
        }
        const [x, y, z] = a.half;
        const inside = contact(convexOfBox({ ...a, half: [2 * x, 2 * y, 2 * z] }), one, 0);
        expect((inside?.area as number) / (8 * (x * y + y * z + z * x))).toBeCloseTo(1, 6);
        expect(distance(inside?.middle as Vec3, a.center)).toBeLessThan(1e-6);
      }),
    );
  });
});

describe('pairs', () => {
  /** Whole numbers, so that many just touch and none is a matter of rounding. */
  const corner = fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -9, max: 9 }))) as unknown as fc.Arbitrary<Vec3>;

  it('are those that a look at every pair finds', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(corner, corner), { maxLength: 25 }), fc.nat(2), (list, slack) => {
        const bounds = list.map((corners) => boundsOf(corners));
        const every: [number, number][] = [];
        bounds.forEach((a, i) => {
          bounds.forEach((b, j) => {
            const near = ([0, 1, 2] as const).every((k) => a.min[k] - slack <= b.max[k] && b.min[k] <= a.max[k] + slack);
            if (i < j && near) every.push([i, j]);
          });
        });
        expect(pairsNear(bounds, slack)).toEqual(every);
      }),
      { numRuns: 300 },
    );
  });
});
