import { distance, type Vec3 } from '../../geometry/vector.js';
import type { Camera, Pixel } from './camera.js';
import { type Fit, fitCamera, fitPlane, type Lens, missMm, type Sighting, shownAt } from './fit.js';
import { lieOf } from './plane.js';

/** How well one known place agrees with all the others. */
export interface CheckedPoint {
  readonly px: Pixel;
  readonly at: Vec3;
  /** From where the picture's camera shows the place to where it was picked; absent where it is not shown at all. */
  readonly residualPx?: number;
  readonly residualMm?: number;
  /** How far off it would be told by the other places alone, mm; absent where those settle nothing. */
  readonly predictedMm?: number;
  /** Wrong, and not used. */
  readonly leftOut: boolean;
}

/** What a picture's known places say of it. */
export interface SolvedPicture {
  readonly method: 'plane' | 'camera';
  readonly points: readonly CheckedPoint[];
  readonly fit?: Fit;
  /** Root mean square over the points used, mm. */
  readonly residualMm?: number;
  /** Worst error of a point told by the others, mm; absent where there are too few to know it. */
  readonly leftOutMm?: number;
  readonly usable: boolean;
  /** Why it is not usable and what would make it so; of a usable one what to know about it. */
  readonly notes: readonly PictureNote[];
}

export type PictureNote =
  | { readonly what: 'too few'; readonly have: number; readonly need: number; readonly plane: boolean; readonly focal: boolean }
  | { readonly what: 'outside'; readonly points: readonly number[] }
  | { readonly what: 'twice'; readonly points: readonly [number, number] }
  | { readonly what: 'on a line' }
  | { readonly what: 'no fit' }
  | { readonly what: 'over limit'; readonly leftOutMm: number; readonly limitMm: number; readonly suspects: readonly number[] }
  | { readonly what: 'mirrored' }
  | { readonly what: 'turned' }
  | { readonly what: 'cropped' };

/** Places within this of a plane count as in it, mm, unless they are themselves known less well. */
const FLAT_MM = 5;
/** Places that stray less than this share of their length from a line settle no plane. */
const LINE = 0.02;
const SAME_PX = 2;
const SAME_MM = 2;

/** Points needed before the error of each can be told by the others. */
export const leastPoints = (plane: boolean, focal: boolean): number => (focal || plane ? 5 : 7);

/**
 * Ties a picture to the datum by places that are known and seen in it; names one wrong place where there is one to spare.
 * `limitMm`: the worst error of a place told by the others that a usable picture may have. `near`: a camera that fitted the same pixels
 * with other weights, to begin from.
 */
export function solvePicture(sightings: readonly Sighting[], lens: Lens, limitMm: number, near?: Camera): SolvedPicture {
  const focal = lens.focalPx !== undefined;
  const plane = isFlat(sightings);
  const faults = faultsOf(sightings, lens, plane);
  const method = focal || !plane ? 'camera' : 'plane';
  if (faults.length > 0) return { method, points: sightings.map(unchecked), usable: false, notes: faults };
  const whole = checked(sightings, lens, method, near);
  const strained = focal && (!isGood(whole, limitMm) || strain(whole, sightings) > STRAINED);
  if (isGood(whole, limitMm) && !strained) return solved(whole, sightings, undefined, []);
  const freed = strained ? withoutFocal(sightings, lens, plane) : undefined;
  if (freed && isGood(freed, limitMm) && strain(freed, sightings) * EASED < strain(whole, sightings))
    return solved(freed, sightings, undefined, [{ what: 'cropped' }]);
  if (isGood(whole, limitMm)) return solved(whole, sightings, undefined, []);
  const without = withoutOne(sightings, lens, method, limitMm);
  if (without.length === 1) {
    const [{ left, i }] = without as [(typeof without)[number]];
    return solved(left, sightings, i, []);
  }
  const odd = askew(sightings, lens, method, limitMm);
  if (!whole.fit) return { method, points: sightings.map(unchecked), usable: false, notes: [odd ?? { what: 'no fit' }] };
  const suspects = without.map(({ i }) => i);
  const over: PictureNote = { what: 'over limit', leftOutMm: whole.leftOutMm ?? Number.POSITIVE_INFINITY, limitMm, suspects };
  return { ...solved(whole, sightings, undefined, [odd ?? over]), usable: false };
}

interface Checked {
  readonly method: 'plane' | 'camera';
  readonly fit: Fit | undefined;
  readonly predicted: readonly (number | undefined)[];
  readonly leftOutMm: number | undefined;
}

const isGood = ({ fit, leftOutMm }: Checked, limitMm: number): boolean =>
  fit !== undefined && leftOutMm !== undefined && leftOutMm <= limitMm;

/** Mean square of the residuals in their own standard deviations: about 1 where all is as it is said to be. */
function strain({ fit }: Checked, sightings: readonly Sighting[]): number {
  return fit ? fit.chiSquare / Math.max(1, 2 * sightings.length - fit.unknowns) : Number.POSITIVE_INFINITY;
}

/** A strain above this asks whether the focal length is right; and it is not where without it the strain is so many times less. */
const STRAINED = 6;
const EASED = 4;

/** All sightings fitted together, and each told by the others. */
function checked(sightings: readonly Sighting[], lens: Lens, method: 'plane' | 'camera', from?: Camera): Checked {
  const fitOf = (some: readonly Sighting[], start?: Camera): Fit | undefined =>
    method === 'plane' ? fitPlane(some, lieOf(sightings.map(({ at }) => at)).plane) : fitCamera(some, lens, start);
  const fit = fitOf(sightings, from);
  const near = fit?.method === 'camera' ? fit.camera : undefined;
  const predicted = sightings.map((one, i) => {
    const others =
      fit &&
      fitOf(
        sightings.filter((_, k) => k !== i),
        near,
      );
    return others && missMm(others, one);
  });
  const known = predicted.filter((value) => value !== undefined);
  const enough =
    known.length === sightings.length && sightings.length >= leastPoints(method === 'plane', lens.focalPx !== undefined);
  return { method, fit, predicted, leftOutMm: enough ? Math.max(...known) : undefined };
}

/** As if nothing were known of the lens: a crop has neither the axis in its middle nor the angle that its file says. */
function withoutFocal(sightings: readonly Sighting[], { size }: Lens, plane: boolean): Checked | undefined {
  return sightings.length < leastPoints(plane, false) ? undefined : checked(sightings, { size }, plane ? 'plane' : 'camera');
}

/** Each single place without which all the others agree; the clearest alone where it is twice as clear as the next. */
function withoutOne(sightings: readonly Sighting[], lens: Lens, method: 'plane' | 'camera', limitMm: number) {
  const spare = sightings.length - leastPoints(method === 'plane', lens.focalPx !== undefined);
  if (spare < 1) return [];
  const found = sightings
    .map((one, i) => ({
      i,
      one,
      left: checked(
        sightings.filter((_, k) => k !== i),
        lens,
        method,
      ),
    }))
    .filter(({ left, one }) => isGood(left, limitMm) && left.fit && missMm(left.fit, one) > limitMm)
    .sort((a, b) => (a.left.leftOutMm as number) - (b.left.leftOutMm as number));
  const [first, second] = found;
  const clear = first && second && 2 * (first.left.leftOutMm as number) <= (second.left.leftOutMm as number);
  return clear ? [first] : found;
}

function solved(
  of: Checked,
  sightings: readonly Sighting[],
  out: number | undefined,
  notes: readonly PictureNote[],
): SolvedPicture {
  const { fit, method, leftOutMm } = of;
  const used = sightings.map((_, i) => i).filter((i) => i !== out);
  const points = sightings.map((one, i): CheckedPoint => {
    const shown = fit && shownAt(fit, one.at);
    const predictedMm = i === out ? fit && missMm(fit, one) : of.predicted[used.indexOf(i)];
    return {
      px: one.px,
      at: one.at,
      ...(shown ? { residualPx: Math.hypot(shown[0] - one.px[0], shown[1] - one.px[1]) } : {}),
      ...(fit ? { residualMm: missMm(fit, one) } : {}),
      ...(predictedMm === undefined ? {} : { predictedMm }),
      leftOut: i === out,
    };
  });
  const misses = used.map((i) => points[i]?.residualMm ?? 0);
  const residualMm = Math.sqrt(misses.reduce((sum, miss) => sum + miss * miss, 0) / Math.max(1, misses.length));
  return {
    method,
    points,
    ...(fit ? { fit, residualMm } : {}),
    ...(leftOutMm === undefined ? {} : { leftOutMm }),
    usable: true,
    notes,
  };
}

const unchecked = ({ px, at }: Sighting): CheckedPoint => ({ px, at, leftOut: false });

function isFlat(sightings: readonly Sighting[]): boolean {
  if (sightings.length < 4) return true;
  const known = Math.max(...sightings.map(({ sigmaMm }) => sigmaMm));
  return lieOf(sightings.map(({ at }) => at)).offMm <= Math.max(FLAT_MM, 2 * known);
}

function faultsOf(sightings: readonly Sighting[], lens: Lens, plane: boolean): readonly PictureNote[] {
  const { widthPx, heightPx } = lens.size;
  const outside = sightings.flatMap(({ px: [u, v] }, i) => (u >= 0 && v >= 0 && u <= widthPx && v <= heightPx ? [] : [i]));
  if (outside.length > 0) return [{ what: 'outside', points: outside }];
  const focal = lens.focalPx !== undefined;
  const need = leastPoints(plane, focal);
  if (sightings.length < need) return [{ what: 'too few', have: sightings.length, need, plane, focal }];
  const twice = pairOf(sightings);
  if (twice) return [{ what: 'twice', points: twice }];
  const { acrossMm } = lieOf(sightings.map(({ at }) => at));
  const long = Math.max(...sightings.map(({ at }) => distance(at, (sightings[0] as Sighting).at)));
  return acrossMm <= LINE * long ? [{ what: 'on a line' }] : [];
}

/** Two that are one: the same place at two pixels or two places at one pixel. */
function pairOf(sightings: readonly Sighting[]): readonly [number, number] | undefined {
  for (const [i, a] of sightings.entries()) {
    const k = sightings.findIndex(
      (b, at) => at > i && (distance(a.at, b.at) < SAME_MM || Math.hypot(a.px[0] - b.px[0], a.px[1] - b.px[1]) < SAME_PX),
    );
    if (k >= 0) return [i, k];
  }
  return undefined;
}

/** Whether the picture would fit if it were mirrored back, or if its pixels were counted on a copy a quarter turned. */
function askew(sightings: readonly Sighting[], lens: Lens, method: 'plane' | 'camera', limitMm: number): PictureNote | undefined {
  if (method === 'plane') return undefined;
  const { widthPx, heightPx } = lens.size;
  const fits = (some: readonly Sighting[], size = lens.size): boolean =>
    isGood(checked(some, { ...lens, size }, method), limitMm);
  if (fits(sightings.map((one) => ({ ...one, px: [widthPx - one.px[0], one.px[1]] })))) return { what: 'mirrored' };
  return fits(sightings, { widthPx: heightPx, heightPx: widthPx }) ? { what: 'turned' } : undefined;
}
