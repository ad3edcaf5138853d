import { add, cross, dot, norm, scale, subtract, unit, type Vec3 } from './vector.js';

/** What is known of a polygon in space whose corners may be a little out of plane. */
export interface PlanarPolygon {
  /** Enclosed area, mm² where corners are in mm. */
  readonly area: number;
  /** Centre of area. */
  readonly centroid: Vec3;
  /** Unit normal by Newell's method; the corners run anticlockwise seen from its tip. */
  readonly normal: Vec3;
  /** Largest distance of a corner from the best plane through the mean of the corners. */
  readonly outOfPlane: number;
}

/**
 * Newell's method: area vector, centroid and flatness of a polygon given by its corners in order.
 * A polygon of fewer than three corners, or whose corners lie on a line, has area 0 and its mean as centroid.
 */
export function planarPolygon(corners: readonly Vec3[]): PlanarPolygon {
  const count = corners.length;
  let sum: Vec3 = [0, 0, 0];
  for (const corner of corners) sum = add(sum, corner);
  const mean = count === 0 ? sum : scale(sum, 1 / count);
  // Work about the mean, so that a panel far from the origin loses no digits.
  let areaVector: Vec3 = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const a = subtract(corners[i] as Vec3, mean);
    const b = subtract(corners[(i + 1) % count] as Vec3, mean);
    areaVector = add(areaVector, cross(a, b));
  }
  const twice = norm(areaVector);
  const normal = unit(areaVector);
  let outOfPlane = 0;
  for (const corner of corners) outOfPlane = Math.max(outOfPlane, Math.abs(dot(subtract(corner, mean), normal)));
  if (twice === 0) return { area: 0, centroid: mean, normal, outOfPlane };
  let centroid: Vec3 = [0, 0, 0];
  for (let i = 0; i < count; i++) {
    const a = subtract(corners[i] as Vec3, mean);
    const b = subtract(corners[(i + 1) % count] as Vec3, mean);
    centroid = add(centroid, scale(add(a, b), dot(cross(a, b), normal)));
  }
  return { area: twice / 2, centroid: add(mean, scale(centroid, 1 / (3 * twice))), normal, outOfPlane };
}
