import { planarPolygon } from './polygon.js';
import { nearestOnSegment } from './segment.js';
import { add, cross, dot, scale, subtract, unit, type Vec3 } from './vector.js';

type Vec2 = readonly [number, number];

/** A flat polygon with holes, made ready for many questions. Corners that are out of plane are taken onto it. */
export interface Facet {
  readonly center: Vec3;
  /** Unit normal; the corners run anticlockwise seen from its tip. */
  readonly normal: Vec3;
  /** Unit directions in the plane: `u` along the longest side, `v = normal × u`. */
  readonly u: Vec3;
  readonly v: Vec3;
  readonly outline: readonly Vec2[];
  readonly holes: readonly (readonly Vec2[])[];
}

/** Undefined for fewer than three corners, or corners on one line. */
export function facet(corners: readonly Vec3[], holes: readonly (readonly Vec3[])[] = []): Facet | undefined {
  const plane = planarPolygon(corners);
  if (plane.area === 0) return undefined;
  const { normal, centroid: center } = plane;
  const u = longestSide(corners, normal);
  const v = cross(normal, u);
  const flat = (point: Vec3): Vec2 => {
    const from = subtract(point, center);
    return [dot(from, u), dot(from, v)];
  };
  return { center, normal, u, v, outline: corners.map(flat), holes: holes.map((hole) => hole.map(flat)) };
}

function longestSide(corners: readonly Vec3[], normal: Vec3): Vec3 {
  let best: Vec3 = [0, 0, 0];
  let longest = 0;
  corners.forEach((corner, i) => {
    const side = subtract(corners[(i + 1) % corners.length] as Vec3, corner);
    const inPlane = subtract(side, scale(normal, dot(side, normal)));
    const square = dot(inPlane, inPlane);
    // A later side must be longer by more than rounding, so that a rectangle's first long side always wins.
    if (square > longest * (1 + 1e-9)) {
      longest = square;
      best = unit(inPlane);
    }
  });
  return best;
}

/** Height of a point over the plane, towards the normal. */
export const height = (point: Vec3, of: Facet): number => dot(subtract(point, of.center), of.normal);

/** Where a plane point lies in the facet's own directions. */
export function inFacet(point: Vec3, of: Facet): Vec2 {
  const from = subtract(point, of.center);
  return [dot(from, of.u), dot(from, of.v)];
}

/** A place of the plane given in the facet's own directions. */
export const onFacet = (of: Facet, along: number, across: number): Vec3 =>
  add(of.center, add(scale(of.u, along), scale(of.v, across)));

/** Even–odd rule. A point on a side may fall either way. */
export function isInPolygon([x, y]: Vec2, polygon: readonly Vec2[]): boolean {
  let inside = false;
  for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
    const [xi, yi] = polygon[i] as Vec2;
    const [xj, yj] = polygon[j] as Vec2;
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}

const covers = (of: Facet, at: Vec2): boolean => isInPolygon(at, of.outline) && !of.holes.some((hole) => isInPolygon(at, hole));

/** The share of the way (0–1) at which a segment goes through the facet; undefined where it does not, or lies in its plane. */
export function throughFacet(from: Vec3, to: Vec3, of: Facet): number | undefined {
  const start = height(from, of);
  const end = height(to, of);
  if (start === end || start * end > 0) return undefined;
  const t = start / (start - end);
  const at: Vec3 = [from[0] + (to[0] - from[0]) * t, from[1] + (to[1] - from[1]) * t, from[2] + (to[2] - from[2]) * t];
  return covers(of, inFacet(at, of)) ? t : undefined;
}

/** The place on the facet nearest to a point. Exact. */
export function nearestOnFacet(point: Vec3, of: Facet): Vec3 {
  const foot = inFacet(point, of);
  if (covers(of, foot)) return onFacet(of, foot[0], foot[1]);
  const flat: Vec3 = [foot[0], foot[1], 0];
  let best: Vec3 = flat;
  let least = Infinity;
  for (const ring of [of.outline, ...of.holes]) {
    ring.forEach(([x, y], i) => {
      const [nextX, nextY] = ring[(i + 1) % ring.length] as Vec2;
      const near = nearestOnSegment(flat, [x, y, 0], [nextX, nextY, 0]);
      if (near.distance < least) {
        least = near.distance;
        best = near.at;
      }
    });
  }
  return onFacet(of, best[0], best[1]);
}
