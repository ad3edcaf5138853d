import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestOfSegments, nearestOnPolyline, nearestOnSegment } from '../../src/geometry/segment.js';
import { distance, lerp, polylineLength, type Vec3 } from '../../src/geometry/vector.js';

const place = fc.tuple(
  fc.integer({ min: -50, max: 50 }),
  fc.integer({ min: -50, max: 50 }),
  fc.integer({ min: -50, max: 50 }),
) as fc.Arbitrary<Vec3>;
const steps = Array.from({ length: 101 }, (_, i) => i / 100);

describe('point to segment', () => {
  // GEO-01 to GEO-06: geometry, computed
  it.each([
    ['GEO-01', [5, 3, 0], [0, 0, 0], [10, 0, 0], 3, 0.5],
    ['GEO-02', [-3, 4, 0], [0, 0, 0], [10, 0, 0], 5, 0],
    ['GEO-03', [13, 4, 0], [0, 0, 0], [10, 0, 0], 5, 1],
    ['GEO-04', [2, 0, 0], [0, 0, 0], [10, 0, 0], 0, 0.2],
    ['GEO-05', [1, 2, 2], [0, 0, 0], [0, 0, 0], 3, 0],
    ['GEO-06', [100, 50, 25], [0, 0, 0], [300, 0, 400], 82.0061, 0.16],
  ] as const)('%s', (_row, point, from, to, expected, t) => {
    const near = nearestOnSegment(point, from, to);
    expect(near.distance).toBeCloseTo(expected, 4);
    expect(near.t).toBeCloseTo(t, 12);
  });

  it('is never further than any of a hundred places tried on a polyline, and lies on it', () => {
    fc.assert(
      fc.property(place, fc.array(place, { minLength: 2, maxLength: 6 }), (point, path) => {
        const near = nearestOnPolyline(point, path);
        const tried = path.slice(1).flatMap((to, i) => steps.map((t) => distance(point, lerp(path[i] as Vec3, to, t))));
        expect(near?.distance).toBeLessThanOrEqual(Math.min(...tried) + 1e-9);
        expect(distance(point, near?.at as Vec3)).toBeCloseTo(near?.distance as number, 9);
      }),
    );
  });
});

describe('polyline', () => {
  it('tells on which of its segments the nearest place is, counted from 0; at a corner the first of the two', () => {
    const path: Vec3[] = [
      [0, 0, 0],
      [10, 0, 0],
      [10, 10, 0],
      [20, 10, 0],
    ];
    const segmentNear = (point: Vec3): number | undefined => nearestOnPolyline(point, path)?.segment;
    expect(segmentNear([4, -1, 0])).toBe(0);
    expect(segmentNear([11, 5, 0])).toBe(1);
    expect(segmentNear([15, 12, 0])).toBe(2);
    expect(segmentNear([12, -2, 0])).toBe(0);
    expect(segmentNear([-5, 0, 0])).toBe(0);
  });

  it('of one place is that place; without any there is none', () => {
    expect(nearestOnPolyline([3, 4, 0], [[0, 0, 0]])).toEqual({ segment: 0, at: [0, 0, 0], distance: 5 });
    expect(nearestOnPolyline([3, 4, 0], [])).toBeUndefined();
  });

  it('GEO-14: is as long as its parts together', () => {
    expect(
      polylineLength([
        [0, 0, 0],
        [1000, 0, 0],
        [1000, 500, 0],
        [1000, 500, 250],
      ]),
    ).toBe(1750);
    expect(polylineLength([])).toBe(0);
  });
});

describe('segment to segment', () => {
  // GEO-07 to GEO-12: geometry, computed
  it.each([
    ['GEO-07', [0, 0, 0], [10, 0, 0], [5, -5, 3], [5, 5, 3], 3],
    ['GEO-08', [0, 0, 0], [10, 0, 0], [0, 4, 0], [10, 4, 0], 4],
    ['GEO-09', [0, 0, 0], [10, 0, 0], [12, 3, 0], [20, 3, 0], 3.60555],
    ['GEO-10', [0, 0, 0], [10, 0, 0], [5, 0, 0], [15, 0, 0], 0],
    ['GEO-11', [0, 0, 0], [10, 0, 0], [13, -1, 4], [13, 1, 4], 5],
    ['GEO-12', [0, 0, 0], [0, 0, 0], [3, 4, 0], [3, 4, 12], 5],
  ] as const)('%s', (_row, a0, a1, b0, b1, expected) => {
    expect(nearestOfSegments(a0, a1, b0, b1).distance).toBeCloseTo(expected, 5);
    expect(nearestOfSegments(b1, b0, a1, a0).distance).toBeCloseTo(expected, 5);
  });

  it('is never further than any of ten thousand pairs of places tried, and is reached by the two given', () => {
    const coarse = steps.filter((_, i) => i % 2 === 0);
    fc.assert(
      fc.property(place, place, place, place, (a0, a1, b0, b1) => {
        const near = nearestOfSegments(a0, a1, b0, b1);
        let least = Infinity;
        for (const s of coarse) {
          const on = lerp(a0, a1, s);
          for (const t of coarse) least = Math.min(least, distance(on, lerp(b0, b1, t)));
        }
        expect(near.distance).toBeLessThanOrEqual(least + 1e-9);
        expect(distance(near.onA, near.onB)).toBeCloseTo(near.distance, 9);
        expect(nearestOnSegment(near.onA, a0, a1).distance).toBeLessThan(1e-9);
        expect(nearestOnSegment(near.onB, b0, b1).distance).toBeLessThan(1e-9);
      }),
    );
  });
});
