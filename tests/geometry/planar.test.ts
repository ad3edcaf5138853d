import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clipToConvex, crossingSides, isConvex, type Point, signedArea, triangles, turn } from '../../src/geometry/planar.js';

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

  it('of which a corner only touches another side do not cross', () => {
    const touching: Point[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [5, 0],
      [0, 10],
    ];
    for (const shape of [touching, [...touching].reverse(), [...touching.slice(2), ...touching.slice(0, 2)]]) {
      expect(crossingSides(shape)).toBeUndefined();
    }
    // The same corner pushed through by one
    expect(crossingSides(touching.map(([x, y]): Point => (x === 5 ? [5, -1] : [x, y])))).toEqual([0, 2]);
  });

  it('with many corners turned inward fall into as many triangles as they have corners, less two', () => {
    const radii = fc.array(fc.integer({ min: 1, max: 100 }), { minLength: 3, maxLength: 12 });
    fc.assert(
      fc.property(radii, fc.boolean(), (all, backward) => {
        // Corners in order about a middle: no two sides cross.
        const about = all.map((radius, i): Point => {
          const angle = (2 * Math.PI * i) / all.length;
          return [radius * Math.cos(angle), radius * Math.sin(angle)];
        });
        const shape = backward ? [...about].reverse() : about;
        expect(crossingSides(shape)).toBeUndefined();
        const parts = triangles(shape);
        expect(parts.length).toBe(shape.length - 2);
        const areas = parts.map((corners) => signedArea(corners.map((i) => shape[i] as Point)));
        for (const area of areas) expect(area).toBeGreaterThan(-1e-9);
        // No overlap: what they cover together is what the polygon covers.
        const whole = Math.abs(signedArea(shape));
        expect(areas.reduce((sum, area) => sum + area, 0) / whole).toBeCloseTo(1, 9);
        const corner = shape.some((_, i) => {
          const [a, b, c] = [0, 1, 2].map((k) => about[(i + k) % about.length] as Point) as [Point, Point, Point];
          return turn(a, b, c) < -1e-9;
        });
        if (corner) expect(isConvex(about)).toBe(false);
      }),
      { numRuns: 400 },
    );
  });

  it('of fewer than three corners are no triangle', () => {
    expect(triangles([])).toEqual([]);
    expect(
      triangles([
        [1, 2],
        [3, 4],
      ]),
    ).toEqual([]);
    expect(
      triangles([
        [0, 0],
        [1, 0],
        [0, 1],
      ]),
    ).toEqual([[0, 1, 2]]);
  });

  it('know whether a corner turns inward', () => {
    expect(isConvex(square)).toBe(true);
    expect(isConvex(ell)).toBe(false);
  });
});
