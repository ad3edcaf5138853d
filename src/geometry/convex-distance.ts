import type { Convex } from './convex.js';
import { nearestOfSegments } from './segment.js';
import { cross, dot, norm, subtract, unit, type Vec3 } from './vector.js';

/** The least and greatest coordinate of a solid along a direction. */
function extent(solid: Convex, axis: Vec3): readonly [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (const corner of solid.corners) {
    const at = dot(corner, axis);
    if (at < low) low = at;
    if (at > high) high = at;
  }
  return [low, high];
}

/** Clear distance of the two shadows on an axis; negative where they overlap. */
function shadowGap(a: Convex, b: Convex, axis: Vec3): number {
  const [lowA, highA] = extent(a, axis);
  const [lowB, highB] = extent(b, axis);
  return Math.max(lowB - highA, lowA - highB);
}

/**
 * The widest gap found between the shadows of two solids on any face normal or pair of edges: they meet where it is not above 0
 * (separating axis theorem), and are never nearer than it. Stops at the first gap above `enough`.
 */
export function separation(a: Convex, b: Convex, enough = Infinity): number {
  let widest = -Infinity;
  for (const { normal } of [...a.faces, ...b.faces]) {
    widest = Math.max(widest, shadowGap(a, b, normal));
    if (widest > enough) return widest;
  }
  for (const along of directions(a)) {
    for (const other of directions(b)) {
      const axis = cross(along, other);
      if (norm(axis) < PARALLEL) continue;
      widest = Math.max(widest, shadowGap(a, b, unit(axis)));
      if (widest > enough) return widest;
    }
  }
  return widest;
}

/** Sine below which two edges count as parallel: their normal would be noise, and a face normal does its work. */
const PARALLEL = 1e-9;

/** Unit directions of the edges, parallel ones once. */
function directions(solid: Convex): readonly Vec3[] {
  const known = seen.get(solid);
  if (known) return known;
  const found: Vec3[] = [];
  for (const [from, to] of solid.edges) {
    const along = unit(subtract(to, from));
    if (!found.some((other) => norm(cross(other, along)) < PARALLEL)) found.push(along);
  }
  seen.set(solid, found);
  return found;
}
const seen = new WeakMap<Convex, readonly Vec3[]>();

/**
 * Distance of two convex solids, 0 where they meet. Exact: it lies between a corner and a face or between two edges
 * (C. Ericson, Real-Time Collision Detection, 5.1 and 5.4).
 */
export function convexDistance(a: Convex, b: Convex): number {
  if (separation(a, b) <= 0) return 0;
  let least = Math.min(cornersToFaces(a.corners, b), cornersToFaces(b.corners, a));
  for (const [a0, a1] of a.edges) {
    for (const [b0, b1] of b.edges) least = Math.min(least, nearestOfSegments(a0, a1, b0, b1).distance);
  }
  return least;
}

/** From each corner straight onto each face that it lies over. */
function cornersToFaces(corners: readonly Vec3[], solid: Convex): number {
  let least = Infinity;
  for (const { normal, corners: ring } of solid.faces) {
    for (const corner of corners) {
      const over = dot(subtract(corner, ring[0] as Vec3), normal);
      if (over >= 0 && over < least && isOver(corner, ring, normal)) least = over;
    }
  }
  return least;
}

function isOver(point: Vec3, ring: readonly Vec3[], normal: Vec3): boolean {
  return ring.every((corner, i) => {
    const side = subtract(ring[(i + 1) % ring.length] as Vec3, corner);
    return dot(cross(normal, side), subtract(point, corner)) >= 0;
  });
}
