import { describe, expect, it } from 'vitest';
import { adjust } from '../../../src/compute/camera/adjust.js';
import { type Camera, moved, type Pixel, projectPoint, rayThrough } from '../../../src/compute/camera/camera.js';
import type { Sighting } from '../../../src/compute/camera/fit.js';
import {
  type Homography,
  homographyOf,
  inverse,
  normalisation,
  nullVector,
  shownBy,
} from '../../../src/compute/camera/homography.js';
import { solvePicture } from '../../../src/compute/camera/solve.js';
import { cameraOfProjection, projectionOf } from '../../../src/compute/camera/space-dlt.js';
import { norm, type Vec3 } from '../../../src/geometry/vector.js';
import { BOX, cameraTowards, WALL } from '../../support/cameras.js';

const SIZE = { widthPx: 4000, heightPx: 3000 };
const closeTo = (found: readonly number[] | undefined, wanted: readonly number[], digits = 9): void => {
  expect(found?.length).toBe(wanted.length);
  wanted.forEach((value, k) => void expect(found?.[k]).toBeCloseTo(value, digits));
};

describe('an adjustment', () => {
  it('of a straight line is that by hand, with its covariance', () => {
    // y = 1, 2, 6 at x = −1, 0, 1: mean 3, slope (6 − 1) / 2 = 2.5; residuals −0.5, 1, −0.5. Covariance 1/3 of the mean, 1/2 of the slope.
    const line = ([a = 0, b = 0]: readonly number[]) => [a - b - 1, a - 2, a + b - 6];
    const done = adjust(line, [0, 0], [1e-4, 1e-4]);
    closeTo(done?.values, [3, 2.5], 6);
    expect(done?.chiSquare).toBeCloseTo(1.5, 9);
    const covariance = done?.covariance();
    closeTo(covariance?.to1DArray(), [1 / 3, 0, 0, 1 / 2], 6);
  });

  it('of unknowns of very different sizes keeps its covariance: a hundred million times as large is 1e16 as much', () => {
    const line = ([a = 0, b = 0]: readonly number[]) => [a - b / 1e8 - 1, a - 2, a + b / 1e8 - 6];
    const done = adjust(line, [0, 0], [1e-4, 1e4]);
    expect((done?.covariance().get(1, 1) ?? 0) / 1e16).toBeCloseTo(0.5, 4);
  });

  it('ends in the bottom of a bent valley', () => {
    // Rosenbrock’s function from its usual start, Moré, Garbow and Hillstrom, ACM TOMS 7, 1981, problem 1 (from memory): (1, 1), sum 0.
    const done = adjust(([x = 0, y = 0]) => [10 * (y - x * x), 1 - x], [-1.2, 1], [1e-6, 1e-6]);
    closeTo(done?.values, [1, 1], 4);
    expect(done?.chiSquare).toBeLessThan(1e-8);
  });

  it('steps back from the impossible, and is none from an impossible start', () => {
    // The plain step from 10 is x ln x = 23: beyond 0, where there is no logarithm.
    const log = ([x = 0]: readonly number[]) => (x > 0 ? [Math.log(x)] : undefined);
    closeTo(adjust(log, [10], [1e-6])?.values, [1], 5);
    expect(adjust(log, [-1], [1e-6])).toBeUndefined();
  });
});

describe('a null vector', () => {
  it('is what is at right angles to all rows; none where more than one is', () => {
    closeTo(
      nullVector([
        [1, 0, 0],
        [0, 1, 0],
      ])?.map(Math.abs),
      [0, 0, 1],
    );
    // (1, 2, 2) / 3 is at right angles to (2, −1, 0) and (0, 1, −1).
    const found = nullVector([
      [2, -1, 0],
      [0, 1, -1],
      [2, 0, -1],
    ]);
    closeTo(
      found?.map((value) => value * Math.sign(found[0] ?? 1)),
      [1 / 3, 2 / 3, 2 / 3],
    );
    expect(nullVector([[1, 0, 0]])).toBeUndefined();
    expect(
      nullVector([
        [1, 0, 0],
        [2, 0, 0],
      ]),
    ).toBeUndefined();
  });
});

describe('points made ready', () => {
  it('lie about their middle, √2 from it on average; none where all are one', () => {
    // A square of 4 about (3, 5): its corners are 2√2 from the middle.
    const made = normalisation([
      [1, 3],
      [5, 3],
      [5, 7],
      [1, 7],
    ]);
    closeTo(made?.middle, [3, 5]);
    expect(made?.factor).toBeCloseTo(0.5, 9);
    expect(
      normalisation([
        [7, 7],
        [7, 7],
      ]),
    ).toBeUndefined();
  });
});

describe('a homography by itself', () => {
  const h: Homography = [2, 0.1, 30, -0.2, 3, 40, 1e-4, 2e-4, 1];

  it('is found of what it shows, and none where all is shown at one place or comes from one', () => {
    const on = [
      [0, 0],
      [500, 0],
      [500, 400],
      [0, 400],
      [200, 100],
    ] as const;
    const found = homographyOf(on.map((at) => ({ on: at, px: shownBy(h, at) as Pixel })));
    for (const at of [
      [123, 45],
      [450, 390],
    ] as const)
      closeTo(shownBy(found as Homography, at), shownBy(h, at) as Pixel, 6);
    expect(homographyOf(on.map((at) => ({ on: at, px: [7, 7] as const })))).toBeUndefined();
    expect(homographyOf(on.map((at) => ({ on: [7, 7] as const, px: at })))).toBeUndefined();
  });

  it('times its inverse is the identity but for a factor; on its horizon it shows nothing', () => {
    const [a, b] = [h, inverse(h)];
    const product = [0, 1, 2].flatMap((i) =>
      [0, 1, 2].map((k) => [0, 1, 2].reduce((sum, j) => sum + (a[3 * i + j] as number) * (b[3 * j + k] as number), 0)),
    );
    closeTo(
      product.map((value) => value / (product[0] as number)),
      [1, 0, 0, 0, 1, 0, 0, 0, 1],
    );
    // 1e-4 x + 1 = 0.
    expect(shownBy(h, [-10_000, 0])).toBeUndefined();
    expect(shownBy(h, [-9_999, 0])).toBeDefined();
  });
});

describe('a projection by itself', () => {
  const camera = cameraTowards([1200, -2600, 900], [300, 0, 400], 3050, SIZE);
  const pairs = BOX.map((at) => ({ at, px: projectPoint(camera, at)?.px as Pixel }));

  it('is none of five places, of one place, or of one pixel', () => {
    expect(projectionOf(pairs.slice(0, 5))).toBeUndefined();
    expect(projectionOf(pairs.map(({ px }) => ({ at: [1, 2, 3], px })))).toBeUndefined();
    expect(projectionOf(pairs.map(({ at }) => ({ at, px: [7, 7] })))).toBeUndefined();
  });

  it('is the same camera times any factor, also a negative one', () => {
    const projection = projectionOf(pairs) as readonly number[];
    for (const factor of [1, -1, 250, -0.01]) {
      const found = cameraOfProjection(
        projection.map((value) => value * factor),
        camera.principal,
        [300, 0, 400],
      );
      closeTo(found?.centre, camera.centre, 3);
      closeTo(found?.look, camera.look, 6);
      closeTo(found?.right, camera.right, 6);
      closeTo(found?.down, camera.down, 6);
      expect(found?.focalPx).toBeCloseTo(3050, 3);
      expect(found?.k1).toBe(0);
    }
  });

  it('of light that runs parallel is no camera', () => {
    expect(cameraOfProjection([1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 1], [0, 0], [0, 0, 1])).toBeUndefined();
  });
});

describe('a camera by itself', () => {
  const camera: Camera = {
    centre: [0, 0, 0],
    right: [1, 0, 0],
    down: [0, 0, -1],
    look: [0, 1, 0],
    focalPx: 1000,
    k1: 0,
    principal: [2000, 1500],
  };

  it('shows from a millimetre before it on, at its tangent times the focal length', () => {
    expect(projectPoint(camera, [0.1, 1, 0])).toEqual({ px: [2100, 1500], depthMm: 1 });
    expect(projectPoint(camera, [0, 0.99, 0])).toBeUndefined();
    expect(projectPoint(camera, [0, -5, 0])).toBeUndefined();
  });

  it('shows nothing beyond where its radial term would turn back: r² of 2/3 for k1 of −0.5', () => {
    const bent = { ...camera, k1: -0.5 };
    const at = (square: number): Vec3 => [1000 * Math.sqrt(square), 1000, 0];
    // r (1 − 0.5 r²) at r² = 0.64: 0.8 · 0.68.
    closeTo(projectPoint(bent, at(0.64))?.px, [2544, 1500]);
    expect(projectPoint(bent, at(0.66))).toBeDefined();
    expect(projectPoint(bent, at(0.67))).toBeUndefined();
    expect(projectPoint(bent, at(9))).toBeUndefined();
    closeTo(projectPoint({ ...camera, k1: 0.5 }, at(0.64))?.px, [2000 + 800 * 1.32, 1500]);
    closeTo(
      rayThrough({ ...camera, k1: 0.5 }, [2000 + 100 * 1.005, 1500]),
      [0.1 / Math.hypot(1, 0.1), 1 / Math.hypot(1, 0.1), 0],
      6,
    );
    expect(norm(rayThrough(bent, [2100, 1400]))).toBeCloseTo(1, 9);
  });

  it('turned by a quarter about the upright looks left, and stands where it was moved', () => {
    // Right-handed about +z: +y goes to −x, +x to +y.
    const turned = moved(camera, [0, 0, Math.PI / 2], [7, 8, 9]);
    closeTo(turned.look, [-1, 0, 0]);
    closeTo(turned.right, [0, 1, 0]);
    closeTo(turned.down, [0, 0, -1]);
    expect(turned.centre).toEqual([7, 8, 9]);
    // By 30° about its own line of sight it keeps looking there.
    const rolled = moved(camera, [0, Math.PI / 6, 0], [0, 0, 0]);
    closeTo(rolled.look, [0, 1, 0]);
    closeTo(rolled.right, [Math.sqrt(3) / 2, 0, -0.5]);
    expect(moved(camera, [0, 0, 0], [0, 0, 0])).toEqual(camera);
  });
});

describe('a wrong place among few', () => {
  const camera = cameraTowards([200, -2000, 300], [0, 0, 0], 3000, SIZE);
  const see = (count: number): readonly Sighting[] =>
    WALL.slice(0, count).map((at, i) => {
      const px = projectPoint(camera, at)?.px as Pixel;
      return { at, px: i === 1 ? [px[0] - 150, px[1] + 80] : px, sigmaMm: 1, sigmaPx: 2 };
    });

  it('is not named where none is to spare: the picture is over its limit', () => {
    const { usable, notes, leftOutMm } = solvePicture(see(5), { size: SIZE }, 20);
    expect(usable).toBe(false);
    expect(notes).toEqual([{ what: 'over limit', leftOutMm, limitMm: 20, suspects: [] }]);
    expect(leftOutMm).toBeGreaterThan(20);
  });

  it('is named where one is to spare: the others agree to the last digit', () => {
    const { usable, notes, points, leftOutMm } = solvePicture(see(6), { size: SIZE }, 20);
    expect([usable, notes]).toEqual([true, []]);
    expect(points.map(({ leftOut }) => leftOut)).toEqual([false, true, false, false, false, false]);
    expect(leftOutMm).toBeLessThan(0.01);
  });
});
