import type { Box } from './box.js';
import { facet } from './facet.js';
import { isConvex, triangles } from './planar.js';
import { add, cross, dot, scale, subtract, unit, type Vec3 } from './vector.js';

/** A convex solid by its faces: the corners of each run anticlockwise seen from outside. */
export interface Convex {
  readonly corners: readonly Vec3[];
  readonly faces: readonly ConvexFace[];
  readonly edges: readonly (readonly [Vec3, Vec3])[];
}

export interface ConvexFace {
  readonly normal: Vec3;
  readonly corners: readonly Vec3[];
}

/** A solid of two faces of equal corner count, joined side by side; `top` runs anticlockwise seen from its own outside. */
function prism(top: readonly Vec3[], bottom: readonly Vec3[]): Convex {
  const count = top.length;
  const at = (ring: readonly Vec3[], i: number): Vec3 => ring[i % count] as Vec3;
  const sides = top.map((_, i) => [at(bottom, i), at(bottom, i + 1), at(top, i + 1), at(top, i)]);
  const corners = [...top, ...bottom];
  const edges = top.flatMap(
    (_, i) =>
      [
        [at(top, i), at(top, i + 1)],
        [at(bottom, i), at(bottom, i + 1)],
        [at(top, i), at(bottom, i)],
      ] as const,
  );
  const faces = [[...top], [...bottom].reverse(), ...sides].map((ring) => ({ normal: normalOf(ring), corners: ring }));
  return { corners, faces, edges };
}

const normalOf = ([a, b, c]: readonly Vec3[]): Vec3 =>
  unit(cross(subtract(b as Vec3, a as Vec3), subtract(c as Vec3, b as Vec3)));

export function convexOfBox({ center, axes: [along, up, across], half }: Box): Convex {
  const ring = (side: 1 | -1): readonly Vec3[] =>
    (
      [
        [-1, -1],
        [1, -1],
        [1, 1],
        [-1, 1],
      ] as const
    ).map(([a, b]) => add(add(center, scale(across, side * half[2])), add(scale(along, a * half[0]), scale(up, b * half[1]))));
  // Seen from its tip, `across` has along → up anticlockwise in a right-handed set of axes only.
  const rightHanded = dot(cross(along, up), across) > 0;
  return rightHanded ? prism(ring(1), ring(-1)) : prism(ring(-1), ring(1));
}

/**
 * A flat plate of some thickness about its outline, as convex solids: one where the outline is convex, else one a triangle.
 * Corners that are out of plane are taken onto it. None for an outline without area.
 */
export function convexOfPlate(outline: readonly Vec3[], thickness: number): readonly Convex[] {
  const plane = facet(outline);
  if (!plane) return [];
  // Laid flat, an outline runs anticlockwise about its own normal.
  const { outline: flat } = plane;
  const rings = isConvex(flat) ? [flat] : triangles(flat).map((ears) => ears.map((i) => flat[i] as readonly [number, number]));
  const place = ([along, across]: readonly [number, number], side: 1 | -1): Vec3 =>
    add(plane.center, add(add(scale(plane.u, along), scale(plane.v, across)), scale(plane.normal, (side * thickness) / 2)));
  return rings.map((ring) =>
    prism(
      ring.map((point) => place(point, 1)),
      ring.map((point) => place(point, -1)),
    ),
  );
}
