import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Box, boxBetween, boxBounds, clipToBox, isInBox, nearestInBox } from '../../src/geometry/box.js';
import { type Facet, facet, nearestOnFacet, throughFacet } from '../../src/geometry/facet.js';
import { grid } from '../../src/geometry/grid.js';
import { mayComeWithin, segmentToBox } from '../../src/geometry/segment-box.js';
import { segmentToFacet } from '../../src/geometry/segment-facet.js';
import { add, distance, dot, lerp, scale, unit, type Vec3 } from '../../src/geometry/vector.js';

const number = fc.integer({ min: -40, max: 40 });
const place = fc.tuple(number, number, number) as fc.Arbitrary<Vec3>;
const size = fc.integer({ min: 1, max: 20 });
const SIN = 0.6;
const COS = 0.8;
/** Boxes: one turned about z by the angle of a 3–4–5 triangle, so that its axes are exact. */
const aboutZ: Box['axes'] = [
  [COS, SIN, 0],
  [-SIN, COS, 0],
  [0, 0, 1],
];
/** And one whose axes lie along none of the datum's: thirds of whole numbers. */
const askew: Box['axes'] = [
  [2 / 3, -1 / 3, 2 / 3],
  [2 / 3, 2 / 3, -1 / 3],
  [-1 / 3, 2 / 3, 2 / 3],
];
const turned = fc
  .tuple(place, size, size, size, fc.constantFrom(aboutZ, askew))
  .map(([center, a, b, c, axes]): Box => ({ center, half: [a, b, c], axes }));
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

  it('is as far from a segment as from the nearest of its places', () => {
    // 3–4–5: 3 beyond the face in x, 4 beyond it in y; then through it; then one place of no length
    const box = boxBetween([0, 0, 0], [10, 20, 30]);
    expect(segmentToBox([13, 24, -5], [13, 24, 50], box)).toEqual({ t: expect.any(Number), distance: 5 });
    expect(segmentToBox([-5, 10, 15], [50, 10, 15], box).distance).toBe(0);
    expect(segmentToBox([5, 10, 37], [5, 10, 37], box).distance).toBe(7);
    fc.assert(
      fc.property(turned, place, place, (one, from, to) => {
        const near = segmentToBox(from, to, one);
        const away = (t: number): number => {
          const at = lerp(from, to, t);
          return distance(at, nearestInBox(at, one));
        };
        expect(away(near.t)).toBeCloseTo(near.distance, 9);
        for (const t of shares) expect(near.distance).toBeLessThanOrEqual(away(t) + 1e-9);
      }),
    );
  });

  it('is never called far from a segment that comes near', () => {
    fc.assert(
      fc.property(turned, place, place, fc.nat(20), (one, from, to, by) => {
        if (segmentToBox(from, to, one).distance <= by) expect(mayComeWithin(from, to, one, by + 1e-9)).toBe(true);
        else if (by === 0) expect(mayComeWithin(from, to, one, -1e-9)).toBe(false);
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

  it('is met where the segment only begins or ends on it', () => {
    expect(throughFacet([1, 4, 7], [1, 4, 14], ell)).toBeCloseTo(0, 12);
    expect(throughFacet([1, 4, 0], [1, 4, 7], ell)).toBe(1);
    expect(throughFacet([1, 1, 7], [1, 4, 7], ell)).toBeUndefined();
    expect(segmentToFacet([1, 4, 0], [1, 4, 14], ell)).toBe(0);
    expect(segmentToFacet([1, 4, 9], [1, 4, 14], ell)).toBe(2);
  });

  it('of three corners is met at the place and the share of the way that the segment was laid through it', () => {
    const weight = fc.integer({ min: -3, max: 8 });
    fc.assert(
      fc.property(place, place, place, weight, weight, place, size, size, (a, b, c, p, q, way, before, after) => {
        const of = facet([a, b, c]);
        const sum = p + q + 5;
        fc.pre(of !== undefined && sum > 0 && p !== 0 && q !== 0);
        const at = ([0, 1, 2] as const).map((k) => (p * a[k] + q * b[k] + 5 * c[k]) / sum) as unknown as Vec3;
        fc.pre(Math.abs(dot(unit(way), (of as Facet).normal)) > 1e-3);
        const found = throughFacet(add(at, scale(way, -before)), add(at, scale(way, after)), of as Facet);
        if (p > 0 && q > 0) expect(found).toBeCloseTo(before / (before + after), 9);
        else expect(found).toBeUndefined();
      }),
      { numRuns: 300 },
    );
  });

  it('has its first direction along its longest side, the first of two alike', () => {
    const along = (corners: readonly Vec3[]): string => (facet(corners)?.u ?? []).map((part) => part.toFixed(6)).join(' ');
    const corners: Vec3[] = [
      [0, 0, 0],
      [10, 0, 0],
      [10, 4, 0],
      [0, 4, 0],
    ];
    expect(along(corners)).toBe('1.000000 0.000000 0.000000');
    expect(along([...corners.slice(1), ...corners.slice(0, 1)])).toBe('-1.000000 0.000000 0.000000');
    // 3–4–5: the longest side is the last
    expect(
      along([
        [0, 0, 0],
        [3, 0, 0],
        [3, 4, 0],
      ]),
    ).toBe('-0.600000 -0.800000 0.000000');
  });

  it('is none for fewer than three corners, or corners on one line', () => {
    expect(facet([])).toBeUndefined();
    expect(
      facet([
        [1, 2, 3],
        [7.1, -5.3, 0.7],
      ]),
    ).toBeUndefined();
    expect(
      facet([
        [0, 0, 0],
        [1, 1, 1],
        [2, 2, 2],
      ]),
    ).toBeUndefined();
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

  it('is as far from a segment as the nearest of their places, tried along the segment', () => {
    fc.assert(
      fc.property(place, place, (from, to) => {
        const near = segmentToFacet(from, to, ell);
        let least = Infinity;
        for (const t of shares) {
          const at = lerp(from, to, t);
          least = Math.min(least, distance(at, nearestOnFacet(at, ell)));
        }
        expect(near).toBeLessThanOrEqual(least + 1e-9);
        // The places tried stand at most half of a two-hundredth of the way from the nearest.
        expect(near).toBeGreaterThanOrEqual(least - distance(from, to) / 400 - 1e-9);
      }),
    );
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

  it('stops where it is told, and looks at nothing twice', () => {
    const things = Array.from({ length: 40 }, (_, i) => ({
      index: i % 20,
      bounds: { min: [i, 0, 0], max: [i + 9, 9, 9] } as const,
    }));
    const index = grid(things, 2);
    const seen: number[] = [];
    const all = { min: [0, 0, 0], max: [60, 9, 9] } as const;
    expect(index.visit(all, (i) => seen.push(i) === 3)).toBe(true);
    expect(seen).toHaveLength(3);
    expect([...index.near(all)].sort((a, b) => a - b)).toEqual(Array.from({ length: 20 }, (_, i) => i));
  });

  it('finds each of very many things, and those far outside the rest', () => {
    const at = (i: number): Vec3 => (i % 9999 === 1 ? [1e6 + i, -5e5, 0] : [(i * 7) % 5003, (i * 11) % 3001, (i * 13) % 2003]);
    const places = Array.from({ length: 40_000 }, (_, i) => at(i));
    const index = grid(
      places.map((one, i) => ({ index: i, bounds: { min: one, max: one } })),
      200,
    );
    for (let i = 1; i < places.length; i += 1111) expect(index.near({ min: at(i), max: at(i) })).toContain(i);
    expect(index.near({ min: at(9999 * 3 + 1), max: at(9999 * 3 + 1) })).toContain(9999 * 3 + 1);
  });

  it('bears a thing of a size that only a slip of units makes', () => {
    const index = grid([{ index: 0, bounds: { min: [-1e9, -1e9, -1e9], max: [1e9, 1e9, 1e9] } }], 10);
    expect(index.near({ min: [0, 0, 0], max: [1, 1, 1] })).toEqual([0]);
  });
});
