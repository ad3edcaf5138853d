import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundsOf, boxBetween, clipToBox, nearestInBox } from '../../src/geometry/box.js';
import { nearestOfSegments, nearestOnSegment } from '../../src/geometry/segment.js';
import { mayComeWithin, segmentToBox } from '../../src/geometry/segment-box.js';
import { distance, type Vec3 } from '../../src/geometry/vector.js';

/**
 * Distances in exact arithmetic: fractions of whole numbers (BigInt), for places with whole coordinates. No rounding, and no clamping
 * of a general solution: every case (inside of both, an end of one, ends of both) is worked out and the least that is valid is taken.
 */
type Fraction = readonly [bigint, bigint];
const less = (a: Fraction, b: Fraction): boolean => a[0] * b[1] < b[0] * a[1];
const least = (all: readonly Fraction[]): Fraction => all.reduce((a, b) => (less(b, a) ? b : a));
/** Fractions here have fewer digits than a double can hold the ratio of, once scaled. */
const asNumber = ([over, under]: Fraction): number => Number((over * 10n ** 24n) / under) / 1e24;

type Whole = readonly [bigint, bigint, bigint];
const whole = ([x, y, z]: Vec3): Whole => [BigInt(x), BigInt(y), BigInt(z)];
const minus = (a: Whole, b: Whole): Whole => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const times = (a: Whole, b: Whole): bigint => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Squared distance of a place from a segment: at an end, or at the foot where it lies between them. */
function squareToSegment(point: Whole, from: Whole, to: Whole): Fraction {
  const along = minus(to, from);
  const off = minus(point, from);
  const length = times(along, along);
  const foot = times(off, along);
  const ends: Fraction[] = [
    [times(off, off), 1n],
    [times(minus(point, to), minus(point, to)), 1n],
  ];
  if (length === 0n || foot < 0n || foot > length) return least(ends);
  return least([...ends, [times(off, off) * length - foot * foot, length]]);
}

function squareOfSegments(a0: Whole, a1: Whole, b0: Whole, b1: Whole): Fraction {
  const found = [
    squareToSegment(a0, b0, b1),
    squareToSegment(a1, b0, b1),
    squareToSegment(b0, a0, a1),
    squareToSegment(b1, a0, a1),
  ];
  const [u, v, w] = [minus(a1, a0), minus(b1, b0), minus(a0, b0)];
  const [uu, uv, vv, uw, vw] = [times(u, u), times(u, v), times(v, v), times(u, w), times(v, w)];
  const under = uu * vv - uv * uv;
  if (under > 0n) {
    // Both feet of the common normal, as shares s/under and t/under.
    const [s, t] = [uv * vw - vv * uw, uu * vw - uv * uw];
    const inside = s >= 0n && s <= under && t >= 0n && t <= under;
    const gap = [0, 1, 2].map((k) => (w[k] as bigint) * under + (u[k] as bigint) * s - (v[k] as bigint) * t) as unknown as Whole;
    if (inside) found.push([times(gap, gap), under * under]);
  }
  return least(found);
}

const place = fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -400, max: 400 }))) as unknown as fc.Arbitrary<Vec3>;
/** Few different coordinates, so that parallel, touching and crossing segments come up often. */
const near = fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -2, max: 2 }))) as unknown as fc.Arbitrary<Vec3>;

describe('distances against exact arithmetic', () => {
  it.each([
    ['scattered', place],
    ['crowded', near],
  ] as const)('segment and segment, %s', (_name, spots) => {
    fc.assert(
      fc.property(spots, spots, spots, spots, (a0, a1, b0, b1) => {
        const exact = Math.sqrt(asNumber(squareOfSegments(whole(a0), whole(a1), whole(b0), whole(b1))));
        expect(nearestOfSegments(a0, a1, b0, b1).distance).toBeCloseTo(exact, 6);
      }),
      { numRuns: 2000 },
    );
  });

  it('point and segment', () => {
    fc.assert(
      fc.property(place, place, place, (point, from, to) => {
        const exact = Math.sqrt(asNumber(squareToSegment(whole(point), whole(from), whole(to))));
        expect(nearestOnSegment(point, from, to).distance).toBeCloseTo(exact, 9);
      }),
      { numRuns: 1000 },
    );
  });

  it('point and box: the sum of how far it stands out along each axis, squared', () => {
    fc.assert(
      fc.property(place, place, place, (point, a, b) => {
        const out = [0, 1, 2].map((k) => {
          const [low, high] = [Math.min(a[k] as number, b[k] as number), Math.max(a[k] as number, b[k] as number)];
          return Math.max(low - (point[k] as number), 0, (point[k] as number) - high);
        });
        const exact = Math.sqrt(out.reduce((sum, one) => sum + one * one, 0));
        expect(distance(point, nearestInBox(point, boxBetween(a, b)))).toBeCloseTo(exact, 9);
      }),
    );
  });

  it('segment and box: the least from its ends to the box, from the box’s corners and from its edges, or nothing where it goes through', () => {
    const axes = [0, 1, 2] as const;
    fc.assert(
      fc.property(near, near, near, near, (from, to, a, b) => {
        const low = axes.map((k) => Math.min(a[k], b[k])) as unknown as Vec3;
        const high = axes.map((k) => Math.max(a[k], b[k])) as unknown as Vec3;
        const found = segmentToBox(from, to, boxBetween(low, high)).distance;
        // Face by face: a place over a face is as far as it is high; so ends of the segment, and every edge of the box.
        let exact = Math.min(...[from, to].map((end) => distance(end, nearestInBox(end, boxBetween(low, high)))));
        for (const along of axes) {
          const [p, q] = axes.filter((k) => k !== along) as [0 | 1 | 2, 0 | 1 | 2];
          for (const one of [low, high]) {
            for (const other of [low, high]) {
              const [start, end] = [[...low] as number[], [...high] as number[]];
              start[p] = end[p] = one[p];
              start[q] = end[q] = other[q];
              const edge = [start, end] as unknown as readonly [Vec3, Vec3];
              exact = Math.min(
                exact,
                Math.sqrt(asNumber(squareOfSegments(whole(from), whole(to), whole(edge[0]), whole(edge[1])))),
              );
            }
          }
        }
        if (found > 0) expect(found).toBeCloseTo(exact, 6);
        else expect(exact === 0 || partInside(from, to, low, high) !== undefined).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  it('the part of a segment inside a box, its surface counted in, and whether it comes near at all', () => {
    fc.assert(
      fc.property(near, near, near, near, (from, to, a, b) => {
        const box = boxBetween(a, b);
        const { min, max } = boundsOf([a, b]);
        const exact = partInside(from, to, min, max);
        const found = clipToBox(from, to, box);
        expect(found === undefined).toBe(exact === undefined);
        found?.forEach((share, k) => {
          expect(share).toBeCloseTo(asNumber((exact as readonly Fraction[])[k] as Fraction), 12);
        });
        expect(mayComeWithin(from, to, box, 0)).toBe(exact !== undefined);
        // Moved out by one: the same answer as for the larger box, whose sizes are still whole.
        const larger = partInside(
          from,
          to,
          min.map((low) => low - 1) as unknown as Vec3,
          max.map((high) => high + 1) as unknown as Vec3,
        );
        expect(mayComeWithin(from, to, box, 1)).toBe(larger !== undefined);
      }),
      { numRuns: 2000 },
    );
  });
});

/** In exact fractions: the shares of the way at which the segment is between the two faces of every axis, first and last. */
function partInside(from: Vec3, to: Vec3, low: Vec3, high: Vec3): readonly [Fraction, Fraction] | undefined {
  let enter: Fraction = [0n, 1n];
  let leave: Fraction = [1n, 1n];
  for (const k of [0, 1, 2] as const) {
    const [start, way] = [BigInt(from[k]), BigInt(to[k] - from[k])];
    const [near0, far0] = [BigInt(low[k]) - start, BigInt(high[k]) - start];
    if (way === 0n) {
      if (near0 > 0n || far0 < 0n) return undefined;
      continue;
    }
    const sign = way > 0n ? 1n : -1n;
    const faces: readonly Fraction[] = [
      [near0 * sign, way * sign],
      [far0 * sign, way * sign],
    ];
    const [first, last] = less(faces[0] as Fraction, faces[1] as Fraction) ? faces : [...faces].reverse();
    if (less(enter, first as Fraction)) enter = first as Fraction;
    if (less(last as Fraction, leave)) leave = last as Fraction;
  }
  return less(leave, enter) ? undefined : [enter, leave];
}
