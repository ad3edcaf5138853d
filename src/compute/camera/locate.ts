import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import type { Vec3 } from '../../geometry/vector.js';
import { type Camera, type Pixel, rayThrough } from './camera.js';
import type { Fit } from './fit.js';
import { inverse, shownBy } from './homography.js';

/** Where a line of sight from a place, along a unit vector, meets what the picture shows; undefined where it does not. */
export type Meets = (from: Vec3, along: Vec3) => Vec3 | undefined;

export interface Located {
  readonly at: Vec3;
  /** Radius within which the place lies 19 times in 20, mm. */
  readonly uncertaintyMm: number;
}

/** Standard deviations along the worst direction that hold 95 % of places spread in two directions: √χ²(0.95, 2) = √5.991. */
const K = 2.448;

/** The place on `surface` that the picture shows at a pixel of standard deviation `sigmaPx`; undefined where the line of sight misses it. */
export function locateOn(fit: Fit, px: Pixel, surface: Meets, sigmaPx: number): Located | undefined {
  const find = (one: Fit, at: Pixel): Vec3 | undefined =>
    one.method === 'plane' ? onPlane(one, at) : onSurface(one.camera, at, surface);
  const at = find(fit, px);
  if (!at) return undefined;
  const slopes: Vec3[] = [];
  const slope = (up: Vec3 | undefined, down: Vec3 | undefined, by: number): Vec3 | undefined => {
    if (up && down) return [0, 1, 2].map((i) => ((up[i] as number) - (down[i] as number)) / (2 * by)) as unknown as Vec3;
    return up ? ([0, 1, 2].map((i) => ((up[i] as number) - (at[i] as number)) / by) as unknown as Vec3) : undefined;
  };
  const sigmas = [...Array(fit.unknowns).keys()].map((i) => Math.sqrt(Math.max(fit.covariance.get(i, i), 0)));
  for (const [i, sigma] of sigmas.entries()) {
    const by = Math.max(sigma * 1e-2, 1e-12);
    const changed = (sign: 1 | -1): Vec3 | undefined => find(fit.with(sigmas.map((_, k) => (k === i ? sign * by : 0))), px);
    const one = slope(changed(1), changed(-1), by);
    if (!one) return undefined;
    slopes.push(one);
  }
  const picked = (
    [
      [0.05, 0],
      [0, 0.05],
    ] as const
  ).map(([u, v]) => slope(find(fit, [px[0] + u, px[1] + v]), find(fit, [px[0] - u, px[1] - v]), 0.05));
  if (picked.includes(undefined)) return undefined;
  const ofFit = new Matrix(slopes.map((one) => [...one])).transpose();
  const ofPx = new Matrix((picked as Vec3[]).map((one) => [...one])).transpose();
  const covariance = ofFit
    .mmul(fit.covariance)
    .mmul(ofFit.transpose())
    .add(ofPx.mmul(ofPx.transpose()).mul(sigmaPx * sigmaPx));
  const most = Math.max(...new EigenvalueDecomposition(covariance, { assumeSymmetric: true }).realEigenvalues);
  return { at, uncertaintyMm: K * Math.sqrt(Math.max(most, 0)) };
}

const onSurface = (camera: Camera, px: Pixel, surface: Meets): Vec3 | undefined => surface(camera.centre, rayThrough(camera, px));

function onPlane(fit: Extract<Fit, { method: 'plane' }>, px: Pixel): Vec3 | undefined {
  const on = shownBy(inverse(fit.homography), px);
  return on && fit.plane.at(on);
}
