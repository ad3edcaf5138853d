import { boundsOf } from './box.js';
import type { Convex } from './convex.js';
import { add, cross, dot, norm, scale, subtract, type Vec3 } from './vector.js';

/** Where two solids meet: middle and size of the place that they share. */
export interface Contact {
  readonly middle: Vec3;
  /** Corners of the shared place. */
  readonly corners: readonly Vec3[];
  /** Area of its surface, the unit of the corners squared; a weight where several contacts are put together. */
  readonly area: number;
}

/**
 * The place that two solids share when each is grown by `reach` outward: the surface of each inside the other.
 * Undefined where they do not meet even so. The middle is the area-weighted middle of that surface.
 */
export function contact(a: Convex, b: Convex, reach: number): Contact | undefined {
  const pieces = [...facesInside(a, b, reach), ...facesInside(b, a, reach)];
  if (pieces.length === 0) return undefined;
  const corners = pieces.flat();
  let area = 0;
  let moment: Vec3 = [0, 0, 0];
  for (const piece of pieces) {
    const { size, middle } = fan(piece);
    area += size;
    moment = add(moment, scale(middle, size));
  }
  const bounds = boundsOf(corners);
  const middle = area > 0 ? scale(moment, 1 / area) : scale(add(bounds.min, bounds.max), 0.5);
  return { middle, corners, area };
}

function facesInside(of: Convex, within: Convex, reach: number): readonly (readonly Vec3[])[] {
  return of.faces.flatMap(({ normal, corners }) => {
    let ring: readonly Vec3[] = corners.map((corner) => add(corner, scale(normal, reach)));
    for (const face of within.faces) ring = clipBehind(ring, face.normal, dot(face.normal, face.corners[0] as Vec3) + reach);
    return ring.length >= 3 ? [ring] : [];
  });
}

/** The part of a ring on the inner side of a plane. */
function clipBehind(ring: readonly Vec3[], normal: Vec3, offset: number): readonly Vec3[] {
  const kept: Vec3[] = [];
  ring.forEach((from, i) => {
    const to = ring[(i + 1) % ring.length] as Vec3;
    const a = dot(normal, from) - offset;
    const b = dot(normal, to) - offset;
    if (a <= 0) kept.push(from);
    if (a * b < 0) kept.push(add(from, scale(subtract(to, from), a / (a - b))));
  });
  return kept;
}

/** Area and centroid of a convex ring, by a fan of triangles. */
function fan(ring: readonly Vec3[]): { readonly size: number; readonly middle: Vec3 } {
  const first = ring[0] as Vec3;
  let size = 0;
  let moment: Vec3 = [0, 0, 0];
  for (let i = 2; i < ring.length; i++) {
    const [b, c] = [ring[i - 1] as Vec3, ring[i] as Vec3];
    const part = norm(cross(subtract(b, first), subtract(c, first))) / 2;
    size += part;
    moment = add(moment, scale(add(add(first, b), c), part / 3));
  }
  return { size, middle: size > 0 ? scale(moment, 1 / size) : first };
}

/** How far some corners reach along each of a few directions, largest first. */
export function spans(corners: readonly Vec3[], axes: readonly Vec3[]): readonly number[] {
  return axes
    .map((axis) => {
      const along = corners.map((corner) => dot(corner, axis));
      return Math.max(...along) - Math.min(...along);
    })
    .sort((x, y) => y - x);
}
