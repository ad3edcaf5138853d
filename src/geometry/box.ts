import { add, dot, scale, subtract, type Vec3 } from './vector.js';

/** A box in space: middle, three unit axes at right angles, half sizes along them. */
export interface Box {
  readonly center: Vec3;
  readonly axes: readonly [Vec3, Vec3, Vec3];
  readonly half: readonly [number, number, number];
}

/** Smallest and largest coordinates: a box along the datum's axes. */
export interface Bounds {
  readonly min: Vec3;
  readonly max: Vec3;
}

export function boundsOf(points: readonly Vec3[]): Bounds {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const point of points) {
    for (let i = 0; i < 3; i++) {
      min[i] = Math.min(min[i] as number, point[i] as number);
      max[i] = Math.max(max[i] as number, point[i] as number);
    }
  }
  return { min, max };
}

export const grow = (bounds: Bounds, by: number): Bounds => ({
  min: [bounds.min[0] - by, bounds.min[1] - by, bounds.min[2] - by],
  max: [bounds.max[0] + by, bounds.max[1] + by, bounds.max[2] + by],
});

export const overlap = (a: Bounds, b: Bounds): boolean =>
  a.min[0] <= b.max[0] &&
  b.min[0] <= a.max[0] &&
  a.min[1] <= b.max[1] &&
  b.min[1] <= a.max[1] &&
  a.min[2] <= b.max[2] &&
  b.min[2] <= a.max[2];

export function boxBounds(box: Box): Bounds {
  const reach = [0, 1, 2].map((i) =>
    box.axes.reduce((sum, axis, k) => sum + Math.abs(axis[i] as number) * (box.half[k] as number), 0),
  ) as [number, number, number];
  return { min: subtract(box.center, reach), max: add(box.center, reach) };
}

/** The box between two opposite corners, along the datum's axes. */
export function boxBetween(a: Vec3, b: Vec3): Box {
  return {
    center: scale(add(a, b), 0.5),
    axes: [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ],
    half: [Math.abs(a[0] - b[0]) / 2, Math.abs(a[1] - b[1]) / 2, Math.abs(a[2] - b[2]) / 2],
  };
}

/** The place in a box (its surface, or the point itself where it is inside) nearest to a point. Exact. */
export function nearestInBox(point: Vec3, box: Box): Vec3 {
  const from = subtract(point, box.center);
  let at = box.center;
  for (let k = 0; k < 3; k++) {
    const axis = box.axes[k] as Vec3;
    const half = box.half[k] as number;
    at = add(at, scale(axis, Math.min(half, Math.max(-half, dot(from, axis)))));
  }
  return at;
}

/** True within the box or at most `slack` outside a face of it. */
export function isInBox(point: Vec3, box: Box, slack = 0): boolean {
  const from = subtract(point, box.center);
  return box.axes.every((axis, k) => Math.abs(dot(from, axis)) <= (box.half[k] as number) + slack);
}

/** The share of the way from `from` to `to` that lies in the box, as [enter, leave] in 0–1; undefined where none does. */
export function clipToBox(from: Vec3, to: Vec3, box: Box): readonly [number, number] | undefined {
  const startX = from[0] - box.center[0];
  const startY = from[1] - box.center[1];
  const startZ = from[2] - box.center[2];
  const alongX = to[0] - from[0];
  const alongY = to[1] - from[1];
  const alongZ = to[2] - from[2];
  let enter = 0;
  let leave = 1;
  for (let k = 0; k < 3; k++) {
    const axis = box.axes[k] as Vec3;
    const half = box.half[k] as number;
    const start = startX * axis[0] + startY * axis[1] + startZ * axis[2];
    const step = alongX * axis[0] + alongY * axis[1] + alongZ * axis[2];
    if (Math.abs(step) < 1e-12) {
      if (Math.abs(start) > half) return undefined;
      continue;
    }
    const near = (-half - start) / step;
    const far = (half - start) / step;
    enter = Math.max(enter, Math.min(near, far));
    leave = Math.min(leave, Math.max(near, far));
    if (enter > leave) return undefined;
  }
  return [enter, leave];
}
