import { distance, dot, lerp, subtract, type Vec3 } from './vector.js';

/** The place on a segment nearest to a point: share of the way `t` (0–1), the place, and its distance. */
export interface OnSegment {
  readonly t: number;
  readonly at: Vec3;
  readonly distance: number;
}

/** Exact; a segment of no length is its start. */
export function nearestOnSegment(point: Vec3, from: Vec3, to: Vec3): OnSegment {
  const along = subtract(to, from);
  const square = dot(along, along);
  const t = square === 0 ? 0 : clamp(dot(subtract(point, from), along) / square);
  const at = lerp(from, to, t);
  return { t, at, distance: distance(point, at) };
}

/** The place on a polyline nearest to a point; `segment` counts from 0. Undefined for an empty path. */
export function nearestOnPolyline(
  point: Vec3,
  path: readonly Vec3[],
): { readonly segment: number; readonly at: Vec3; readonly distance: number } | undefined {
  const first = path[0];
  if (!first) return undefined;
  let best = { segment: 0, at: first, distance: distance(point, first) };
  for (let i = 1; i < path.length; i++) {
    const near = nearestOnSegment(point, path[i - 1] as Vec3, path[i] as Vec3);
    if (near.distance < best.distance) best = { segment: i - 1, at: near.at, distance: near.distance };
  }
  return best;
}

/**
 * The two places where segments a and b come nearest. Where they are parallel, one of the many pairs is given.
 * The unconstrained solution is clamped to a, then to b, then back to a: C. Ericson, Real-Time Collision Detection, 5.1.9.
 */
export function nearestOfSegments(
  a0: Vec3,
  a1: Vec3,
  b0: Vec3,
  b1: Vec3,
): { readonly distance: number; readonly onA: Vec3; readonly onB: Vec3 } {
  const alongA = subtract(a1, a0);
  const alongB = subtract(b1, b0);
  const between = subtract(a0, b0);
  const aa = dot(alongA, alongA);
  const bb = dot(alongB, alongB);
  const ab = dot(alongA, alongB);
  const offA = dot(alongA, between);
  const offB = dot(alongB, between);
  const determinant = aa * bb - ab * ab;
  // Below this the two are parallel to the last digits of a double, or one has no length, and any start on a will do.
  const s0 = determinant > 1e-12 * aa * bb ? clamp((ab * offB - offA * bb) / determinant) : 0;
  const onB = nearestOnSegment(lerp(a0, a1, s0), b0, b1).at;
  const onA = nearestOnSegment(onB, a0, a1).at;
  return { distance: distance(onA, onB), onA, onB };
}

const clamp = (t: number): number => Math.min(1, Math.max(0, t));
