import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clipToConvex, crossingSides, isConvex, type Point, signedArea, triangles } from '../../src/geometry/planar.js';

const square: Point[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
];
// GEO-18: L shape of area 18
const ell: Point[] = [
  [0, 0],
  [6, 0],
  [6, 2],
  [2, 2],
  [2, 5],
  [0, 5],
];

describe('flat polygons', () => {
  it('GEO-18: area, signed by the way around', () => {
    expect(signedArea(ell)).toBe(18);
    expect(signedArea([...ell].reverse())).toBe(-18);
  });

  it('clip to what lies inside', () => {
    const moved: Point[] = square.map(([x, y]) => [x + 6, y + 7]);
    expect(signedArea(clipToConvex(moved, square))).toBeCloseTo(4 * 3, 9);
    expect(
      clipToConvex(
        square.map(([x, y]): Point => [x + 20, y]),
        square,
      ),
    ).toEqual([]);
    expect(
      signedArea(
        clipToConvex(ell, [
          [1, 1],
          [9, 1],
          [9, 9],
          [1, 9],
        ]),
      ),
    ).toBeCloseTo(5 * 1 + 1 * 3, 9);
  });

  it('a clip of two rectangles is their overlap', () => {
    const side = fc.integer({ min: 1, max: 40 });
    const at = fc.integer({ min: -40, max: 40 });
    fc.assert(
      fc.property(at, at, side, side, (x, y, w, h) => {
        const other: Point[] = [
          [x, y],
          [x + w, y],
          [x + w, y + h],
          [x, y + h],
        ];
        const wide = Math.max(0, Math.min(10, x + w) - Math.max(0, x));
        const high = Math.max(0, Math.min(10, y + h) - Math.max(0, y));
        expect(signedArea(clipToConvex(other, square))).toBeCloseTo(wide * high, 9);
      }),
    );
  });

  it('a bow tie crosses itself, an L does not', () => {
    expect(
      crossingSides([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ]),
    ).toEqual([0, 2]);
    expect(crossingSides(ell)).toBeUndefined();
    expect(crossingSides(square)).toBeUndefined();
  });

  it('fall into triangles that add up, and end even where sides cross', () => {
    for (const shape of [ell, [...ell].reverse(), square]) {
      const parts = triangles(shape).map((corners) => signedArea(corners.map((i) => shape[i] as Point)));
      expect(parts.every((area) => area > 0)).toBe(true);
      expect(parts.reduce((sum, area) => sum + area, 0)).toBeCloseTo(Math.abs(signedArea(shape)), 9);
    }
    expect(
      triangles([
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ]).length,
    ).toBe(2);
  });

  it('know whether a corner turns inward', () => {
    expect(isConvex(square)).toBe(true);
    expect(isConvex(ell)).toBe(false);
  });
});
