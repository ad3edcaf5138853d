import { Matrix } from 'ml-matrix';
import { dot, norm, scale, subtract, type Vec3 } from '../../geometry/vector.js';
import { lazy } from '../lazy-value.js';
import { type Adjusted, adjust } from './adjust.js';
import { type Camera, moved, type PictureSize, type Pixel, projectPoint, rayThrough } from './camera.js';
import { type Homography, homographyOf, inverse, shownBy } from './homography.js';
import type { Plane } from './plane.js';
import { cameraOfProjection, projectionOf } from './space-dlt.js';
import { camerasOfThree } from './three-points.js';

/** A place that is known, and where the picture shows it. */
export interface Sighting {
  readonly at: Vec3;
  readonly px: Pixel;
  /** Standard deviation of the place, mm. */
  readonly sigmaMm: number;
  /** Standard deviation of the picked pixel. */
  readonly sigmaPx: number;
}

/** How a picture is tied to the datum: by a camera in space, or by the one plane that all known places lie in. */
export type Fit = CameraFit | PlaneFit;

interface FitBase {
  /** The same fit with its unknowns a little changed: `values` as in `covariance`. */
  with(values: readonly number[]): Fit;
  readonly unknowns: number;
  /** Of the unknowns about 0, of the sightings' own standard deviations; larger where the sightings agree less well than that. */
  readonly covariance: Matrix;
  readonly chiSquare: number;
}

export interface CameraFit extends FitBase {
  readonly method: 'camera';
  readonly camera: Camera;
  /** What was fitted beside where it stood. */
  readonly free: { readonly focal: boolean; readonly radial: boolean };
}

export interface PlaneFit extends FitBase {
  readonly method: 'plane';
  readonly plane: Plane;
  readonly homography: Homography;
}

/** Where a fit shows a place; undefined for what it cannot show. */
export const shownAt = (fit: Fit, at: Vec3): Pixel | undefined =>
  fit.method === 'camera' ? projectPoint(fit.camera, at)?.px : shownBy(fit.homography, fit.plane.on(at));

/** How far beside the place, mm, a picked pixel says that it is: across the line of sight, or on the plane. */
export function missMm(fit: Fit, { at, px }: Pick<Sighting, 'at' | 'px'>): number {
  if (fit.method === 'plane') {
    const found = shownBy(inverse(fit.homography), px);
    const known = fit.plane.on(at);
    return found ? Math.hypot(found[0] - known[0], found[1] - known[1]) : Number.POSITIVE_INFINITY;
  }
  const ray = rayThrough(fit.camera, px);
  const off = subtract(at, fit.camera.centre);
  return norm(subtract(off, scale(ray, dot(off, ray))));
}

/** Sightings from which the radial term is worth finding: six for what settles the camera, and as many again. */
const RADIAL_FROM = 12;
const FOCAL_TRIES = 9;
/** Mean square of the residuals, in their own standard deviations, at which a start is taken for the right one. */
const NEAR_ENOUGH = 4;

export interface Lens {
  readonly size: PictureSize;
  /** Where it is known. */
  readonly focalPx?: number | undefined;
}

/** The camera of sightings in space, or in a plane where its focal length is known. Undefined where they settle none. */
export function fitCamera(sightings: readonly Sighting[], lens: Lens, from?: Camera): CameraFit | undefined {
  const starts = from ? [from] : startsOf(sightings, lens);
  const free = lens.focalPx === undefined;
  let best: CameraFit | undefined;
  for (const start of starts) {
    const fit = refine(sightings, start, free, false);
    if (fit && (!best || fit.chiSquare < best.chiSquare)) best = fit;
    // As near as the sightings can say: no other start would come nearer.
    if (best && best.chiSquare <= NEAR_ENOUGH * Math.max(1, 2 * sightings.length - best.unknowns)) break;
  }
  if (!best || sightings.length < RADIAL_FROM) return best;
  return refine(sightings, best.camera, free, true) ?? best;
}

/** Cameras near enough to the answer for least squares to find it, the likeliest first. */
function* startsOf(sightings: readonly Sighting[], lens: Lens): Generator<Camera> {
  const principal: Pixel = [lens.size.widthPx / 2, lens.size.heightPx / 2];
  const plain = (focalPx: number): Camera => ({
    centre: [0, 0, 0],
    right: [1, 0, 0],
    down: [0, 1, 0],
    look: [0, 0, 1],
    focalPx,
    k1: 0,
    principal,
  });
  const direct = lens.focalPx === undefined ? projectionOf(sightings) : undefined;
  const middle = scale(
    sightings.reduce<Vec3>((sum, { at }) => [sum[0] + at[0], sum[1] + at[1], sum[2] + at[2]], [0, 0, 0]),
    1 / sightings.length,
  );
  const ofDirect = direct && cameraOfProjection(direct, principal, middle);
  if (ofDirect) yield ofDirect;
  // The direct transform is sure only of well spread places; a few focal lengths from wide to long, through three places each, mend that.
  const focals =
    lens.focalPx === undefined ? [...Array(FOCAL_TRIES).keys()].map((i) => lens.size.widthPx * 0.5 * 1.25 ** i) : [lens.focalPx];
  yield* focals
    .flatMap((focal) =>
      triples(sightings).flatMap(([a, b, c]) => camerasOfThree(plain(focal), [a.at, b.at, c.at], [a.px, b.px, c.px])),
    )
    .map((camera) => ({ camera, off: medianOff(camera, sightings) }))
    .sort((a, b) => a.off - b.off)
    .slice(0, 4)
    .map(({ camera }) => camera);
}

const MOST_TRIPLES = 20;

/** Threes of sightings, spread over all of them. */
function triples(sightings: readonly Sighting[]): readonly (readonly [Sighting, Sighting, Sighting])[] {
  const all: [Sighting, Sighting, Sighting][] = [];
  for (let i = 0; i < sightings.length; i++)
    for (let j = i + 1; j < sightings.length; j++)
      for (let k = j + 1; k < sightings.length; k++)
        all.push([sightings[i] as Sighting, sightings[j] as Sighting, sightings[k] as Sighting]);
  const every = Math.max(1, all.length / MOST_TRIPLES);
  return all.filter((_, i) => Math.floor(i / every) !== Math.floor((i - 1) / every));
}

function medianOff(camera: Camera, sightings: readonly Sighting[]): number {
  const offs = sightings.map(({ at, px }) => {
    const shown = projectPoint(camera, at)?.px;
    return shown ? Math.hypot(shown[0] - px[0], shown[1] - px[1]) : Number.POSITIVE_INFINITY;
  });
  // The places that made it fit exactly; the others speak.
  return offs.sort((a, b) => a - b)[Math.min(offs.length - 1, Math.floor((offs.length + 3) / 2))] as number;
}

/** Unknowns: a turn (radians) and a move (mm), then the logarithm of the focal length, then the radial term. */
function refine(sightings: readonly Sighting[], start: Camera, focal: boolean, radial: boolean): CameraFit | undefined {
  const unknowns = 6 + (focal ? 1 : 0) + (radial ? 1 : 0);
  const free = { focal, radial };
  const cameraWith = (base: Camera, values: readonly number[]): Camera => cameraChanged(base, free, values);
  const steps = [1e-6, 1e-6, 1e-6, 1e-3, 1e-3, 1e-3, ...(focal ? [1e-6] : []), ...(radial ? [1e-6] : [])];
  let camera = start;
  let last: ReturnType<typeof adjust>;
  // The weight of a place's own uncertainty depends on how far away the camera turns out to be.
  for (let round = 0; round < 2; round++) {
    const sigmas = sightings.map(({ at, sigmaMm, sigmaPx }) => {
      const depth = projectPoint(camera, at)?.depthMm;
      return depth === undefined ? undefined : Math.hypot(sigmaPx, (camera.focalPx / depth) * sigmaMm);
    });
    const base = camera;
    const residuals = (values: readonly number[]): readonly number[] | undefined => {
      const tried = cameraWith(base, values);
      const all: number[] = [];
      for (const [i, { at, px }] of sightings.entries()) {
        const shown = projectPoint(tried, at)?.px;
        const sigma = sigmas[i] ?? sightings[i]?.sigmaPx;
        if (!shown || sigma === undefined) return undefined;
        all.push((shown[0] - px[0]) / sigma, (shown[1] - px[1]) / sigma);
      }
      return all;
    };
    last = adjust(residuals, new Array<number>(unknowns).fill(0), steps);
    if (!last) return undefined;
    camera = cameraWith(base, last.values);
  }
  return last && cameraFit({ camera, chiSquare: last.chiSquare, unknowns, free }, widened(last, 2 * sightings.length - unknowns));
}

function cameraChanged(base: Camera, { focal, radial }: CameraFit['free'], values: readonly number[]): Camera {
  const [a = 0, b = 0, c = 0, x = 0, y = 0, z = 0] = values;
  return {
    ...moved(base, [a, b, c], [x, y, z]),
    focalPx: focal ? base.focalPx * Math.exp(values[6] ?? 0) : base.focalPx,
    k1: radial ? base.k1 + (values[focal ? 7 : 6] ?? 0) : base.k1,
  };
}

type CameraFigures = Pick<CameraFit, 'camera' | 'chiSquare' | 'unknowns' | 'free'>;

function cameraFit(of: CameraFigures, covariance: () => Matrix): CameraFit {
  return {
    method: 'camera',
    ...of,
    get covariance() {
      return covariance();
    },
    with: (values) => cameraFit({ ...of, camera: cameraChanged(of.camera, of.free, values) }, covariance),
  };
}

/** A fit of a camera as plain data, from which {@link cameraFitOf} makes it again, to the last digit. */
export type CameraFitData = CameraFigures & { readonly covariances: readonly (readonly number[])[] };

export const cameraFitData = ({ camera, chiSquare, unknowns, free, covariance }: CameraFit): CameraFitData => ({
  camera,
  chiSquare,
  unknowns,
  free,
  covariances: covariance.to2DArray(),
});

export const cameraFitOf = ({ covariances, ...of }: CameraFitData): CameraFit =>
  cameraFit(
    of,
    lazy(() => new Matrix(covariances.map((row) => [...row]))),
  );

/** The homography between a plane and the picture. Undefined where the sightings settle none. */
export function fitPlane(sightings: readonly Sighting[], plane: Plane): PlaneFit | undefined {
  const pairs = sightings.map(({ at, px }) => ({ on: plane.on(at), px }));
  const start = homographyOf(pairs);
  if (!start) return undefined;
  const pivot = start.reduce((most, value, i) => (Math.abs(value) > Math.abs(start[most] as number) ? i : most), 0);
  const free = start.map((_, i) => i).filter((i) => i !== pivot);
  const steps = free.map((i) => Math.max(Math.abs(start[i] as number), 1e-9) * 1e-6);
  const homographyWith = (base: Homography, values: readonly number[]): Homography =>
    base.map((value, i) => value + (i === pivot ? 0 : (values[free.indexOf(i)] ?? 0))) as unknown as Homography;
  const sigmas = pairs.map(({ on }, i) => {
    const { sigmaMm, sigmaPx } = sightings[i] as Sighting;
    return Math.hypot(sigmaPx, sigmaMm * pixelsPerMm(start, on));
  });
  const residuals = (values: readonly number[]): readonly number[] | undefined => {
    const tried = homographyWith(start, values);
    const all: number[] = [];
    for (const [i, { on, px }] of pairs.entries()) {
      const shown = shownBy(tried, on);
      if (!shown) return undefined;
      all.push((shown[0] - px[0]) / (sigmas[i] as number), (shown[1] - px[1]) / (sigmas[i] as number));
    }
    return all;
  };
  const last = adjust(residuals, new Array<number>(8).fill(0), steps);
  if (!last) return undefined;
  const homography = homographyWith(start, last.values);
  const made = (h: Homography, covariance: () => Matrix): PlaneFit => ({
    method: 'plane',
    plane,
    homography: h,
    chiSquare: last.chiSquare,
    get covariance() {
      return covariance();
    },
    unknowns: 8,
    with: (values) => made(homographyWith(h, values), covariance),
  });
  return made(homography, widened(last, 2 * sightings.length - 8));
}

/** Pixels that a millimetre on the plane fills there, at most. */
export function pixelsPerMm(h: Homography, [x, y]: readonly [number, number]): number {
  const here = shownBy(h, [x, y]);
  const beside = [shownBy(h, [x + 1, y]), shownBy(h, [x, y + 1])];
  return Math.max(0, ...beside.map((one) => (here && one ? Math.hypot(one[0] - here[0], one[1] - here[1]) : 0)));
}

/** Sightings that agree less well than they should make everything that rests on them less sure (Birge ratio). */
const widened = ({ covariance, chiSquare }: Adjusted, spare: number): (() => Matrix) =>
  lazy(() =>
    covariance()
      .clone()
      .mul(spare > 0 ? Math.max(1, chiSquare / spare) : 1),
  );
