import type { Point } from '../geometry/planar.js';

/** Rings of a cross-section in mm, width to the right and depth up, about the middle of its bounding rectangle. */

const STEPS = 8;

export function arc(center: Point, radius: number, fromDeg: number, toDeg: number, steps = STEPS): readonly Point[] {
  return Array.from({ length: steps + 1 }, (_, k): Point => {
    const angle = ((fromDeg + ((toDeg - fromDeg) * k) / steps) * Math.PI) / 180;
    return [center[0] + radius * Math.cos(angle), center[1] + radius * Math.sin(angle)];
  });
}

export const full = (radius: number): readonly Point[] => arc([0, 0], radius, 0, 360, 48).slice(0, -1);

/** A rectangle between corners, rounded. */
export function rounded(x0: number, y0: number, x1: number, y1: number, radius: number): readonly Point[] {
  const r = Math.max(0, Math.min(radius, (x1 - x0) / 2, (y1 - y0) / 2));
  if (r === 0) {
    return [
      [x0, y0],
      [x1, y0],
      [x1, y1],
      [x0, y1],
    ];
  }
  return [
    ...arc([x1 - r, y1 - r], r, 0, 90),
    ...arc([x0 + r, y1 - r], r, 90, 180),
    ...arc([x0 + r, y0 + r], r, 180, 270),
    ...arc([x1 - r, y0 + r], r, 270, 360),
  ];
}

/** A concave or convex corner at `corner` between unit directions to its neighbours, rounded by `radius`. */
export function filleted(corners: readonly (readonly [x: number, y: number, radius: number])[]): readonly Point[] {
  return corners.flatMap(([x, y, radius], index): readonly Point[] => {
    if (radius <= 0) return [[x, y]];
    const [px, py] = corners[(index + corners.length - 1) % corners.length] as readonly [number, number, number];
    const [nx, ny] = corners[(index + 1) % corners.length] as readonly [number, number, number];
    const to = (qx: number, qy: number): Point => {
      const length = Math.hypot(qx - x, qy - y) || 1;
      return [(qx - x) / length, (qy - y) / length];
    };
    const [a, b] = [to(px, py), to(nx, ny)];
    // All corners of rolled shapes are right angles: the tangent length is the radius.
    const center: Point = [x + (a[0] + b[0]) * radius, y + (a[1] + b[1]) * radius];
    const from = Math.atan2(-b[1], -b[0]);
    const end = Math.atan2(-a[1], -a[0]);
    let sweep = end - from;
    if (sweep > Math.PI) sweep -= 2 * Math.PI;
    if (sweep < -Math.PI) sweep += 2 * Math.PI;
    const degrees = 180 / Math.PI;
    return arc(center, radius, from * degrees, (from + sweep) * degrees);
  });
}
