import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PlanarPolygon, planarPolygon } from '../../src/geometry/polygon.js';
import { add, dot, subtract, type Vec3 } from '../../src/geometry/vector.js';

const close = (found: Vec3, expected: Vec3, digits = 9): void => {
  for (const k of [0, 1, 2] as const) expect(found[k]).toBeCloseTo(expected[k], digits);
};

// GEO-18: L shape of area 18
const ell: Vec3[] = [
  [0, 0, 0],
  [6, 0, 0],
  [6, 2, 0],
  [2, 2, 0],
  [2, 5, 0],
  [0, 5, 0],
];

describe('a polygon in space', () => {
  // GEO-16 to GEO-19: Newell's method, computed
  it.each([
    [
      'GEO-16: rectangle',
      [
        [0, 0, 0],
        [4, 0, 0],
        [4, 3, 0],
        [0, 3, 0],
      ],
      12,
      [0, 0, 1],
      0,
    ],
    [
      'GEO-17: sloped rectangle',
      [
        [0, 0, 0],
        [4, 0, 0],
        [4, 3, 4],
        [0, 3, 4],
      ],
      20,
      [0, -0.8, 0.6],
      0,
    ],
    ['GEO-18: L shape', ell, 18, [0, 0, 1], 0],
    [
      'GEO-19: one corner 0.1 off',
      [
        [0, 0, 0],
        [2, 0, 0],
        [2, 2, 0.1],
        [0, 2, 0],
      ],
      4.0025,
      [-0.02498, -0.02498, 0.99938],
      0.02498,
    ],
  ] as const)('%s', (_row, corners, area, normal, outOfPlane) => {
    const found = planarPolygon(corners as readonly Vec3[]);
    expect(found.area).toBeCloseTo(area, 4);
    close(found.normal, normal, 5);
    expect(found.outOfPlane).toBeCloseTo(outOfPlane, 5);
  });

  it('GEO-20: the L’s centre of area, not the mean of its corners', () => {
    close(planarPolygon(ell).centroid, [7 / 3, 11 / 6, 0]);
  });

  it('is the same figure wherever it stands, and the other way around faces the other way', () => {
    const far = fc.integer({ min: -20_000, max: 20_000 });
    fc.assert(
      fc.property(fc.tuple(far, far, far), (away) => {
        const found = planarPolygon(ell.map((corner) => add(corner, away)));
        expect(found.area).toBeCloseTo(18, 9);
        close(subtract(found.centroid, away), [7 / 3, 11 / 6, 0]);
        const turned = planarPolygon([...ell].reverse());
        expect(turned.area).toBeCloseTo(18, 9);
        close(turned.normal, [0, 0, -1]);
        close(turned.centroid, [7 / 3, 11 / 6, 0]);
      }),
    );
  });

  it('cut in two, has the area and the moment of its parts', () => {
    const spot = fc.tuple(...[0, 1, 2].map(() => fc.integer({ min: -90, max: 90 }))) as unknown as fc.Arbitrary<Vec3>;
    const share = fc.double({ min: -1, max: 2, noNaN: true });
    fc.assert(
      fc.property(spot, spot, spot, share, share, (a, b, c, s, t) => {
        // The fourth corner in the plane of the first three, on the far side of the cut from a to c.
        const d = add(a, ([0, 1, 2] as const).map((k) => s * (c[k] - a[k]) - Math.abs(t) * (b[k] - a[k])) as unknown as Vec3);
        const [whole, one, other] = [
          [a, b, c, d],
          [a, b, c],
          [a, c, d],
        ].map((corners) => planarPolygon(corners)) as [PlanarPolygon, PlanarPolygon, PlanarPolygon];
        fc.pre(one.area > 1 && other.area > 1 && dot(one.normal, other.normal) > 0);
        expect(whole.area).toBeCloseTo(one.area + other.area, 6);
        for (const k of [0, 1, 2] as const) {
          const moment = one.centroid[k] * one.area + other.centroid[k] * other.area;
          expect(whole.centroid[k]).toBeCloseTo(moment / whole.area, 6);
        }
      }),
    );
  });

  it('without area has its mean for a centre', () => {
    expect(planarPolygon([])).toEqual({ area: 0, centroid: [0, 0, 0], normal: [0, 0, 0], outOfPlane: 0 });
    expect(planarPolygon([[1, 2, 3]]).centroid).toEqual([1, 2, 3]);
    expect(
      planarPolygon([
        [0, 0, 0],
        [3, 0, 0],
        [9, 0, 0],
      ]),
    ).toEqual({
      area: 0,
      centroid: [4, 0, 0],
      normal: [0, 0, 0],
      outOfPlane: 0,
    });
  });
});
