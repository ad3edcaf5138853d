import type { Camera, PictureSize } from '../../src/compute/camera/camera.js';
import { cross, subtract, unit, type Vec3 } from '../../src/geometry/vector.js';

/** A camera at `centre` that looks towards a place, upright: its picture's down is as near to the datum's down as can be. */
export function cameraTowards(centre: Vec3, towards: Vec3, focalPx: number, size: PictureSize, k1 = 0): Camera {
  const look = unit(subtract(towards, centre));
  const up: Vec3 = Math.abs(look[2]) > 0.999 ? [1, 0, 0] : [0, 0, 1];
  const right = unit(cross(look, up));
  return { centre, right, down: cross(look, right), look, focalPx, k1, principal: [size.widthPx / 2, size.heightPx / 2] };
}
