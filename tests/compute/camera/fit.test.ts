import { describe, expect, it } from 'vitest';
import { type Camera, type Pixel, projectPoint } from '../../../src/compute/camera/camera.js';
import { cornerNear } from '../../../src/compute/camera/corner.js';
import {
  cameraFitData,
  cameraFitOf,
  fitCamera,
  fitPlane,
  missMm,
  pixelsPerMm,
  type Sighting,
  shownAt,
} from '../../../src/compute/camera/fit.js';
import { lieOf, planeAt } from '../../../src/compute/camera/plane.js';
import { leastPoints, solvePicture } from '../../../src/compute/camera/solve.js';
import { camerasOfThree } from '../../../src/compute/camera/three-points.js';
import { cross, distance, dot, norm, type Vec3 } from '../../../src/geometry/vector.js';
import { cameraTowards, ROOM } from '../../support/cameras.js';

/** Synthetic cameras: what is to be found is known. */
const SIZE = { widthPx: 4000, heightPx: 3000 };
const FOCAL_PX = 3000;
const seen = (camera: Camera, places: readonly Vec3[]): readonly Sighting[] =>
  places.map((at) => ({ at, px: projectPoint(camera, at)?.px as Pixel, sigmaMm: 1, sigmaPx: 2 }));

describe('a fitted camera', () => {
  const bent = cameraTowards([200, -2000, 300], [0, 0, 0], FOCAL_PX, SIZE, -0.08);
  const plain = cameraTowards([200, -2000, 300], [0, 0, 0], FOCAL_PX, SIZE);

  it('has the bend of its lens from twelve places on, and none from fewer', () => {
    const fit = fitCamera(seen(bent, ROOM), { size: SIZE, focalPx: FOCAL_PX });
    expect(fit?.free).toEqual({ focal: false, radial: true });
    expect(fit?.unknowns).toBe(7);
    expect(fit?.camera.k1).toBeCloseTo(-0.08, 4);
    expect(distance(fit?.camera.centre as Vec3, bent.centre)).toBeLessThan(0.5);
    const fewer = fitCamera(seen(bent, ROOM.slice(0, 11)), { size: SIZE, focalPx: FOCAL_PX });
    expect(fewer?.free).toEqual({ focal: false, radial: false });
    expect(fewer?.camera.k1).toBe(0);
  });

  it('has its focal length too where the lens is not known: eight unknowns with the bend', () => {
    const fit = fitCamera(seen(bent, ROOM), { size: SIZE });
    expect(fit?.free).toEqual({ focal: true, radial: true });
    expect(fit?.unknowns).toBe(8);
    expect(fit?.camera.focalPx).toBeCloseTo(FOCAL_PX, 0);
    expect(fit?.camera.k1).toBeCloseTo(-0.08, 4);
    const seven = fitCamera(seen(plain, ROOM.slice(0, 8)), { size: SIZE });
    expect(seven?.unknowns).toBe(7);
    expect(seven?.camera.focalPx).toBeCloseTo(FOCAL_PX, 1);
  });

  it('shows each place where it was seen, misses none, and says how far a false pixel lies beside', () => {
    const sightings = seen(plain, ROOM.slice(0, 8));
    const fit = fitCamera(sightings, { size: SIZE, focalPx: FOCAL_PX });
    if (!fit) throw new Error('no fit');
    for (const { at, px } of sightings) {
      const shown = shownAt(fit, at) as Pixel;
      expect(Math.hypot(shown[0] - px[0], shown[1] - px[1])).toBeLessThan(1e-3);
      expect(missMm(fit, { at, px })).toBeLessThan(1e-3);
    }
    expect(fit.chiSquare).toBeLessThan(1e-6);
    // The axis meets the origin squarely, |(200, −2000, 300)| away: 30 px beside at 3000 px is an angle of tangent 0.01.
    const away = Math.hypot(200, 2000, 300);
    expect(missMm(fit, { at: [0, 0, 0], px: [2030, 1500] })).toBeCloseTo(away * Math.sin(Math.atan(0.01)), 3);
  });

  it('changed by nothing is the same, moved by a millimetre shows places moved; kept as plain data it is the same again', () => {
    const fit = fitCamera(seen(plain, ROOM.slice(0, 8)), { size: SIZE, focalPx: FOCAL_PX });
    if (!fit) throw new Error('no fit');
    const same = fit.with([0, 0, 0, 0, 0, 0]);
    expect(shownAt(same, [100, 0, 0])).toEqual(shownAt(fit, [100, 0, 0]));
    const beside = fit.with([0, 0, 0, 10, 0, 0]);
    if (beside.method !== 'camera') throw new Error('no camera');
    expect(beside.camera.centre[0] - fit.camera.centre[0]).toBeCloseTo(10, 9);
    const again = cameraFitOf(JSON.parse(JSON.stringify(cameraFitData(fit))));
    expect(again.camera).toEqual(fit.camera);
    expect(again.covariance.to2DArray()).toEqual(fit.covariance.to2DArray());
    expect(again.covariance.rows).toBe(6);
  });

  it('is surer of nothing by sightings that agree less well than they say (Birge ratio)', () => {
    const exact = seen(plain, ROOM);
    // Each third of them 20 px beside: ten standard deviations.
    const rough = exact.map((one, i) => (i % 3 === 0 ? { ...one, px: [one.px[0] + 20, one.px[1]] as const } : one));
    const of = (some: readonly Sighting[]) => fitCamera(some, { size: SIZE, focalPx: FOCAL_PX });
    const [sure, unsure] = [of(exact), of(rough)];
    expect((unsure?.covariance.get(3, 3) ?? 0) / (sure?.covariance.get(3, 3) ?? 1)).toBeGreaterThan(4);
    // Exact ones are no surer than their own standard deviations allow.
    expect(sure?.covariance.get(3, 3)).toBeGreaterThan(0.1);
  });
});

describe('a picture of a plane', () => {
  const wall = planeAt([0, 0, 0], [0, -1, 0]);
  const camera = cameraTowards([0, -2000, 0], [0, 0, 0], FOCAL_PX, SIZE);
  const WALL: readonly Vec3[] = [
    [-900, 0, -500],
    [900, 0, -500],
    [900, 0, 500],
    [-900, 0, 500],
    [100, 0, 50],
  ];

  it('shows each place where it was seen; a pixel beside is so many millimetres beside by similar triangles', () => {
    const fit = fitPlane(seen(camera, WALL), wall);
    if (!fit) throw new Error('no fit');
    expect(fit.unknowns).toBe(8);
    for (const { at, px } of seen(camera, WALL)) expect(missMm(fit, { at, px })).toBeLessThan(1e-6);
    // 2 m away at 3000 px: 1.5 px a millimetre.
    expect(missMm(fit, { at: [0, 0, 0], px: [2030, 1500] })).toBeCloseTo(20, 6);
    expect(missMm(fit, { at: [0, 0, 0], px: [2000, 1530] })).toBeCloseTo(20, 6);
    expect(shownAt(fit.with(new Array(8).fill(0)), [100, 0, 50])?.[0]).toBeCloseTo(2150, 6);
  });

  it('is none of places on a line', () => {
    expect(
      fitPlane(
        seen(
          camera,
          [0, 1, 2, 3, 4].map((k): Vec3 => [k * 100, 0, k * 50]),
        ),
        wall,
      ),
    ).toBeUndefined();
  });

  it('fills the more pixels of both directions with a millimetre', () => {
    expect(pixelsPerMm([2, 0, 7, 0, 5, 9, 0, 0, 1], [3, 4])).toBeCloseTo(5, 9);
    expect(pixelsPerMm([6, 0, 7, 0, 5, 9, 0, 0, 1], [3, 4])).toBeCloseTo(6, 9);
    // On its horizon it shows nothing.
    expect(pixelsPerMm([1, 0, 0, 0, 1, 0, 1, 0, 0], [0, 4])).toBe(0);
  });
});

describe('a plane in space', () => {
  it.each<[string, Vec3]>([
    ['x', [1, 0, 0]],
    ['y', [0, 1, 0]],
    ['z', [0, 0, -1]],
    ['slanting', [0.6, 0, 0.8]],
  ])('across %s has axes at right angles, and leads from a place to its coordinates and back', (_, normal) => {
    const plane = planeAt([10, 20, 30], normal);
    const [x, y] = [plane.at([1, 0]), plane.at([0, 1])].map(
      (at) => at.map((v, k) => v - [10, 20, 30][k]!) as unknown as Vec3,
    ) as [Vec3, Vec3];
    expect([norm(x), norm(y), dot(x, y), dot(x, normal), dot(y, normal)].map((v) => Math.round(v * 1e9) / 1e9 + 0)).toEqual([
      1, 1, 0, 0, 0,
    ]);
    expect(dot(cross(x, y), normal)).toBeCloseTo(1, 9);
    const on = plane.on(plane.at([3, -4]));
    expect(on[0]).toBeCloseTo(3, 9);
    expect(on[1]).toBeCloseTo(-4, 9);
  });

  it('is the best one of places: how far they lie off it and how wide they lie', () => {
    // A square of 200 mm, corners 3 mm off to either side by turns: the best plane is the level one.
    const { plane, offMm, acrossMm } = lieOf([
      [-100, -100, 3],
      [100, -100, -3],
      [100, 100, 3],
      [-100, 100, -3],
    ]);
    expect(Math.abs(plane.normal[2])).toBeCloseTo(1, 9);
    expect(offMm).toBeCloseTo(3, 9);
    // Standard deviation of −100, −100, 100, 100.
    expect(acrossMm).toBeCloseTo(100, 6);
    expect(
      lieOf([
        [0, 0, 0],
        [100, 0, 0],
        [200, 0, 0],
      ]).acrossMm,
    ).toBeLessThan(1e-9);
  });
});

describe('what a solved picture says of each place', () => {
  const camera = cameraTowards([200, -2000, 300], [0, 0, 0], FOCAL_PX, SIZE);
  const exact = seen(camera, ROOM.slice(0, 8));
  const lens = { size: SIZE, focalPx: FOCAL_PX };

  it('is how far it is shown beside, told by all and by the others; the whole is their root mean square and their worst', () => {
    const moved = exact.map((one, i) => (i === 3 ? { ...one, px: [one.px[0] + 6, one.px[1] - 4] as const } : one));
    const solved = solvePicture(moved, lens, 20);
    const { fit } = solved;
    if (!fit) throw new Error('no fit');
    solved.points.forEach(({ at, px, residualPx, residualMm }, i) => {
      const shown = shownAt(fit, at) as Pixel;
      expect(px).toEqual(moved[i]?.px);
      expect(residualPx).toBeCloseTo(Math.hypot(shown[0] - px[0], shown[1] - px[1]), 9);
      expect(residualMm).toBeCloseTo(missMm(fit, { at, px }), 9);
    });
    const misses = solved.points.map(({ residualMm = Number.NaN }) => residualMm);
    expect(solved.residualMm).toBeCloseTo(Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / 8), 9);
    const told = solved.points.map(({ predictedMm = Number.NaN }) => predictedMm);
    expect(solved.leftOutMm).toBeCloseTo(Math.max(...told), 9);
    // The others are exact: they tell the moved one √(6² + 4²) px of 3000 beside, at its own distance.
    const ray = distance(exact[3]?.at as Vec3, camera.centre);
    expect(told.indexOf(Math.max(...told))).toBe(3);
    expect(told[3]).toBeGreaterThan((Math.hypot(6, 4) / FOCAL_PX) * ray * 0.8);
    expect(told[3]).toBeLessThan((Math.hypot(6, 4) / FOCAL_PX) * ray * 1.1);
  });

  it('of one that is left out is told by the others, and counts in neither figure', () => {
    const wrong = exact.map((one, i) => (i === 2 ? { ...one, px: [one.px[0] + 300, one.px[1]] as const } : one));
    const solved = solvePicture(wrong, lens, 20);
    expect(solved.points.map(({ leftOut }) => leftOut)).toEqual(exact.map((_, i) => i === 2));
    expect(solved.points[2]?.predictedMm).toBeCloseTo(solved.points[2]?.residualMm as number, 9);
    expect(solved.points[2]?.predictedMm).toBeGreaterThan(100);
    expect(solved.residualMm).toBeLessThan(0.1);
    expect(solved.leftOutMm).toBeLessThan(0.1);
    for (const [i, { predictedMm }] of solved.points.entries()) if (i !== 2) expect(predictedMm).toBeLessThan(0.1);
  });

  it('needs five places, or seven in space with an unknown lens', () => {
    expect([leastPoints(true, true), leastPoints(true, false), leastPoints(false, true), leastPoints(false, false)]).toEqual([
      5, 5, 5, 7,
    ]);
  });

  it('is a fault where one lies outside, on a line with all, or where two are one', () => {
    const notes = (some: readonly Sighting[]) => solvePicture(some, lens, 20).notes;
    const at = (px: Pixel) => exact.map((one, i) => (i === 1 ? { ...one, px } : one));
    for (const px of [
      [-1, 10],
      [4001, 10],
      [10, -1],
      [10, 3001],
    ] as const)
      expect(notes(at(px))).toEqual([{ what: 'outside', points: [1] }]);
    for (const px of [
      [0, 10],
      [4000, 10],
      [10, 0],
      [10, 3000],
    ] as const)
      expect(notes(at(px)).map(({ what }) => what)).not.toContain('outside');
    const [first] = exact as [Sighting];
    expect(notes(at([first.px[0] + 1.9, first.px[1]]))).toEqual([{ what: 'twice', points: [0, 1] }]);
    const near = exact.map((one, i) => (i === 4 ? { ...one, at: [901.9, 0, 500] as const } : one));
    expect(notes(near)).toEqual([{ what: 'twice', points: [2, 4] }]);
    expect(notes(exact.slice(0, 4))).toEqual([{ what: 'too few', have: 4, need: 5, plane: true, focal: true }]);
  });
});

describe('three places', () => {
  const lens = cameraTowards([0, 0, 0], [0, 0, 1], 1000, SIZE);
  const px = [
    [2100, 1500],
    [2000, 1600],
    [1900, 1400],
  ] as const;
  it('of which two are one, or that lie on a line, settle no camera', () => {
    const [a, b]: readonly [Vec3, Vec3] = [
      [0, 0, 0],
      [100, 0, 0],
    ];
    for (const places of [
      [a, a, b],
      [a, b, b],
      [a, b, a],
    ] as const)
      expect(camerasOfThree(lens, places, px)).toEqual([]);
    expect(camerasOfThree(lens, [a, b, [250, 0, 0]], px)).toEqual([]);
  });
});

describe('a corner in a picture', () => {
  /** A bright quarter whose corner stands at a place, so much brighter than its ground. */
  const quarter = (u: number, v: number, contrast: number, [width, height] = [90, 50] as const) => {
    const soft = (d: number): number => Math.min(1, Math.max(0, 0.5 + d / 2));
    const levels = Uint8Array.from(
      { length: width * height },
      (_, i) => 40 + contrast * soft((i % width) - u) * soft(Math.floor(i / width) - v),
    );
    return { width, height, levels };
  };

  it('is found to half a pixel wherever it stands, from any side, and is noise where it is faint', () => {
    for (const [u, v] of [
      [30.5, 20.5],
      [60, 12],
      [45.3, 30.7],
    ] as const)
      for (const [by, down] of [
        [5, -3],
        [-4, 5],
      ] as const) {
        const found = cornerNear(quarter(u, v, 160), u + by, v + down, 9);
        expect(Math.hypot((found?.[0] ?? 0) - u, (found?.[1] ?? 0) - v), `${u} ${v}`).toBeLessThan(0.5);
      }
    expect(cornerNear(quarter(45, 25, 10), 45, 25, 6)).toBeUndefined();
  });

  it('is none at the very edge of the picture', () => {
    for (const [u, v] of [
      [1, 25],
      [88, 25],
      [45, 1],
      [45, 48],
    ] as const)
      expect(cornerNear(quarter(u, v, 160), u, v, 2), `${u} ${v}`).toBeUndefined();
  });
});
