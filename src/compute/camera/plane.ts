import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { add, cross, dot, scale, subtract, type Vec3 } from '../../geometry/vector.js';

/** A plane in space with two axes of its own, mm. */
export interface Plane {
  readonly origin: Vec3;
  readonly normal: Vec3;
  /** A place's coordinates on the plane, straight down onto it. */
  on(at: Vec3): readonly [number, number];
  /** The place of coordinates on the plane. */
  at(on: readonly [number, number]): Vec3;
}

/** The plane through a place at right angles to a unit vector. */
export function planeAt(origin: Vec3, normal: Vec3): Plane {
  const other: Vec3 = Math.abs(normal[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0];
  const x = scale(cross(other, normal), 1 / Math.hypot(...cross(other, normal)));
  const y = cross(normal, x);
  return {
    origin,
    normal,
    on: (at) => [dot(subtract(at, origin), x), dot(subtract(at, origin), y)],
    at: ([a, b]) => add(origin, add(scale(x, a), scale(y, b))),
  };
}

/** How places lie: in a plane, and how far off it and how long and wide, mm. */
export interface Lie {
  readonly plane: Plane;
  /** Farthest from the best plane. */
  readonly offMm: number;
  /** Standard deviation across the longest direction within the plane: next to nothing for places on a line. */
  readonly acrossMm: number;
}

/** The best plane of three or more places by the singular values about their middle. */
export function lieOf(places: readonly Vec3[]): Lie {
  const middle = scale(
    places.reduce((sum, at) => add(sum, at), [0, 0, 0] as Vec3),
    1 / places.length,
  );
  const rows = places.map((at) => [...subtract(at, middle)]);
  while (rows.length < 3) rows.push([0, 0, 0]);
  const svd = new SingularValueDecomposition(new Matrix(rows), { autoTranspose: true });
  const order = svd.diagonal.map((value, i) => ({ value, i })).sort((a, b) => b.value - a.value);
  const normal = svd.rightSingularVectors.getColumn(order[2]?.i ?? 2) as unknown as Vec3;
  const plane = planeAt(middle, normal);
  return {
    plane,
    offMm: Math.max(...places.map((at) => Math.abs(dot(subtract(at, middle), normal)))),
    acrossMm: (order[1]?.value ?? 0) / Math.sqrt(places.length),
  };
}
