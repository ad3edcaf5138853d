import type { Camera, PictureSize } from '../../src/compute/camera/camera.js';
import { cross, subtract, unit, type Vec3 } from '../../src/geometry/vector.js';

/** Places of a wall, six in one plane. */
export const WALL: readonly Vec3[] = [
  [-600, 0, -400],
  [600, 0, -420],
  [580, 0, 450],
  [-560, 0, 470],
  [40, 0, -30],
  [300, 0, 200],
];

/** Six places in space. */
export const BOX: readonly Vec3[] = [
  [0, 0, 0],
  [900, 100, 0],
  [800, -50, 900],
  [-100, 200, 800],
  [400, -400, 300],
  [200, 350, 600],
];

/** Twelve places of a room, the first four in one plane. */
export const ROOM: readonly Vec3[] = [
  [-900, 0, -500],
  [900, 0, -500],
  [900, 0, 500],
  [-900, 0, 500],
  [0, -400, 100],
  [300, 300, -200],
  [-400, 250, 300],
  [500, -300, 350],
  [-650, -250, -300],
  [700, 200, 50],
  [-100, 300, -450],
  [200, -200, 450],
];

/** A camera at `centre` that looks towards a place, upright: its picture's down is as near to the datum's down as can be. */
export function cameraTowards(centre: Vec3, towards: Vec3, focalPx: number, size: PictureSize, k1 = 0): Camera {
  const look = unit(subtract(towards, centre));
  const up: Vec3 = Math.abs(look[2]) > 0.999 ? [1, 0, 0] : [0, 0, 1];
  const right = unit(cross(look, up));
  return { centre, right, down: cross(look, right), look, focalPx, k1, principal: [size.widthPx / 2, size.heightPx / 2] };
}
