import { add, cross, dot, norm, scale, subtract, unit, type Vec3 } from '../../geometry/vector.js';

/** A place in a picture as it is shown upright: px to the right and px down from its upper left corner. */
export type Pixel = readonly [u: number, v: number];

/** Width and height of a picture as it is shown upright, px. */
export interface PictureSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/**
 * A pinhole camera with one radial term (Brown, "Close-range camera calibration", Photogrammetric Engineering 37, 1971; Hartley and
 * Zisserman, *Multiple View Geometry*, 2nd ed. 2003, 6.1 and 7.4). Square pixels, the axis through the middle of the picture.
 */
export interface Camera {
  /** Where its centre of projection stands, mm in the datum. */
  readonly centre: Vec3;
  /** Unit axes in the datum: to the right in the picture, down in it, and the way it looks. */
  readonly right: Vec3;
  readonly down: Vec3;
  readonly look: Vec3;
  /** Focal length in pixels. */
  readonly focalPx: number;
  /** Radial term: a place at the tangent `r` from the axis is shown at `r (1 + k1 r²)`. */
  readonly k1: number;
  /** Where its axis meets the picture. */
  readonly principal: Pixel;
}

export interface Projected {
  readonly px: Pixel;
  /** Distance from the camera along its axis, mm. */
  readonly depthMm: number;
}

/** Nearer than this, or behind it, a camera shows nothing, mm. */
const NEAREST_MM = 1;

/** Where a camera shows a place; undefined for what is beside or behind it. */
export function projectPoint(camera: Camera, at: Vec3): Projected | undefined {
  const off = subtract(at, camera.centre);
  const depthMm = dot(off, camera.look);
  if (depthMm < NEAREST_MM) return undefined;
  const x = dot(off, camera.right) / depthMm;
  const y = dot(off, camera.down) / depthMm;
  const square = x * x + y * y;
  const bend = 1 + camera.k1 * square;
  // Beyond its turning point the radial term would fold the picture back over itself.
  if (bend <= 0 || 1 + 3 * camera.k1 * square <= 0) return undefined;
  return { px: [camera.principal[0] + camera.focalPx * x * bend, camera.principal[1] + camera.focalPx * y * bend], depthMm };
}

const ROUNDS = 20;

/** Unit vector from the camera's centre through a place of its picture. */
export function rayThrough(camera: Camera, px: Pixel): Vec3 {
  const shownX = (px[0] - camera.principal[0]) / camera.focalPx;
  const shownY = (px[1] - camera.principal[1]) / camera.focalPx;
  let [x, y] = [shownX, shownY];
  for (let i = 0; i < ROUNDS && camera.k1 !== 0; i++) {
    const bend = 1 + camera.k1 * (x * x + y * y);
    [x, y] = [shownX / bend, shownY / bend];
  }
  return unit(add(add(camera.look, scale(camera.right, x)), scale(camera.down, y)));
}

/** The same camera turned by a rotation vector (axis times angle, radians) in the datum, and moved. */
export function moved(camera: Camera, turn: Vec3, by: Vec3): Camera {
  const angle = norm(turn);
  const axis = unit(turn);
  const turned = (v: Vec3): Vec3 => {
    if (angle === 0) return v;
    const along = scale(axis, dot(axis, v) * (1 - Math.cos(angle)));
    return add(add(scale(v, Math.cos(angle)), scale(cross(axis, v), Math.sin(angle))), along);
  };
  const look = unit(turned(camera.look));
  const right = unit(subtract(turned(camera.right), scale(look, dot(look, turned(camera.right)))));
  return { ...camera, look, right, down: cross(look, right), centre: add(camera.centre, by) };
}

/** Diagonal of a 36 mm × 24 mm frame, mm, to which phones give their equivalent focal length (Exif 2.32, tag A405). */
const FULL_FRAME_DIAGONAL_MM = Math.hypot(36, 24);

/** Focal length in pixels from the one equivalent on 35 mm film, by the diagonal. */
export const focalFromEquivalent = (equivalentMm: number, { widthPx, heightPx }: PictureSize): number =>
  (equivalentMm / FULL_FRAME_DIAGONAL_MM) * Math.hypot(widthPx, heightPx);

/** Focal length in pixels from the angle of view from side to side, degrees. */
export const focalFromAngle = (angleDeg: number, { widthPx }: PictureSize): number =>
  widthPx / 2 / Math.tan((angleDeg * Math.PI) / 360);
