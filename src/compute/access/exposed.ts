import { add, cross, scale, unit, type Vec3 } from '../../geometry/vector.js';
import type { HandWay, Obstacles } from './obstacles.js';
import { FINGER_MM, HAND_RADIUS_MM, REACH_MM } from './reach.js';

/** Ways out of a place that are tried: along the axes first, then between two of them, then between three. */
const WAYS: readonly Vec3[] = [-1, 0, 1]
  .flatMap((x) => [-1, 0, 1].flatMap((y) => [-1, 0, 1].map((z): Vec3 => [x, y, z])))
  .filter((way) => way.some((part) => part !== 0))
  .sort((a, b) => size(a) - size(b))
  .map(unit);

function size(way: Vec3): number {
  return Math.hypot(...way);
}

/** Whether a hand with its forearm gets to a place that no panel closes: one of 26 ways, straight or half a hand aside, is clear. */
export function isExposed(at: Vec3, obstacles: Obstacles): boolean {
  return WAYS.some((out) => waysAlong(at, out).some((way) => obstacles.isClear(way)));
}

function waysAlong(at: Vec3, out: Vec3): readonly HandWay[] {
  const straight = {
    start: add(at, scale(out, REACH_MM.forearm)),
    hand: add(at, scale(out, FINGER_MM)),
    target: at,
    radiusMm: HAND_RADIUS_MM,
  };
  const aside = unit(cross(out, Math.abs(out[2]) < 0.7 ? [0, 0, 1] : [1, 0, 0]));
  const other = cross(out, aside);
  // What lies on a floor or against a wall is come to along it.
  const bent = [aside, scale(aside, -1), other, scale(other, -1)].map((side) => {
    const by = scale(side, HAND_RADIUS_MM + ALONG_MM);
    return { ...straight, start: add(straight.start, by), hand: add(straight.hand, by) };
  });
  return [straight, ...bent];
}
/** Between the hand and the face that it goes along, mm. */
const ALONG_MM = 1;
