import { nearestOnSegment } from './segment.js';
import { add, dot, scale, subtract, type Vec3 } from './vector.js';

/**
 * How far along a ray one meets the round-ended tube about a segment: 0 from within it, undefined where the ray misses it. `along` is
 * a unit vector. Exact: the first root of the tube's quadratic between the two ends, else of the nearer end's ball.
 */
export function rayToTube(start: Vec3, along: Vec3, from: Vec3, to: Vec3, radius: number): number | undefined {
  if (nearestOnSegment(start, from, to).distance <= radius) return 0;
  const axis = subtract(to, from);
  const off = subtract(start, from);
  const square = dot(axis, axis);
  const axisAlong = dot(axis, along);
  const axisOff = dot(axis, off);
  const a = square - axisAlong * axisAlong;
  // Below this the ray runs along the tube, and only its ends can be met.
  if (a > 1e-12 * square) {
    const b = square * dot(off, along) - axisOff * axisAlong;
    const c = square * dot(off, off) - axisOff * axisOff - radius * radius * square;
    const root = b * b - a * c;
    if (root < 0) return undefined;
    const t = (-b - Math.sqrt(root)) / a;
    const place = axisOff + t * axisAlong;
    if (place > 0 && place < square) return t >= 0 ? t : undefined;
  }
  const ends = [rayToBall(start, along, from, radius), rayToBall(start, along, to, radius)].filter((t) => t !== undefined);
  return ends.length > 0 ? Math.min(...ends) : undefined;
}

/** How far along a ray one meets a ball: 0 from within it, undefined where the ray misses it. */
export function rayToBall(start: Vec3, along: Vec3, middle: Vec3, radius: number): number | undefined {
  const off = subtract(start, middle);
  const c = dot(off, off) - radius * radius;
  if (c <= 0) return 0;
  const b = dot(off, along);
  const root = b * b - c;
  if (root < 0 || b > 0) return undefined;
  return -b - Math.sqrt(root);
}

/** The place so far along a ray. */
export const alongRay = (start: Vec3, along: Vec3, by: number): Vec3 => add(start, scale(along, by));
