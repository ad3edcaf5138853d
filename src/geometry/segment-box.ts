import type { Box } from './box.js';
import type { Vec3 } from './vector.js';

/** Where a segment comes nearest to a box: share of the way `t` (0–1) and the distance, 0 where it goes through. */
export interface NearBox {
  readonly t: number;
  readonly distance: number;
}

/**
 * Exact. The squared distance of a place on the segment is the sum over the box's axes of how far it stands out there, squared:
 * convex, and a parabola between the places where the segment passes a face's plane. So the least is where the slope, which
 * never falls, passes zero; it is looked for in at most seven stretches.
 */
export function segmentToBox(from: Vec3, to: Vec3, box: Box): NearBox {
  const { center, axes, half } = box;
  const x = from[0] - center[0];
  const y = from[1] - center[1];
  const z = from[2] - center[2];
  const wx = to[0] - from[0];
  const wy = to[1] - from[1];
  const wz = to[2] - from[2];
  const [a, b, c] = axes;
  return segmentToCorner(
    x * a[0] + y * a[1] + z * a[2],
    x * b[0] + y * b[1] + z * b[2],
    x * c[0] + y * c[1] + z * c[2],
    wx * a[0] + wy * a[1] + wz * a[2],
    wx * b[0] + wy * b[1] + wz * b[2],
    wx * c[0] + wy * c[1] + wz * c[2],
    half,
  );
}

/** Places where the slope changes, kept from call to call: this is asked many millions of times. */
const turns = new Float64Array(8);

function segmentToCorner(
  x: number,
  y: number,
  z: number,
  wx: number,
  wy: number,
  wz: number,
  [hx, hy, hz]: readonly [number, number, number],
): NearBox {
  let count = 0;
  turns[count++] = 0;
  count = turnsOf(x, wx, hx, count);
  count = turnsOf(y, wy, hy, count);
  count = turnsOf(z, wz, hz, count);
  turns[count++] = 1;
  sortFirst(count);
  const slopeAt = (t: number): number => slope(x, wx, hx, t) + slope(y, wy, hy, t) + slope(z, wz, hz, t);
  let best = 1;
  let low = 0;
  let lowSlope = slopeAt(0);
  if (lowSlope >= 0) best = 0;
  else {
    for (let i = 1; i < count; i++) {
      const high = turns[i] as number;
      const highSlope = slopeAt(high);
      if (highSlope >= 0) {
        best = low + ((high - low) * lowSlope) / (lowSlope - highSlope);
        break;
      }
      low = high;
      lowSlope = highSlope;
    }
  }
  const dx = beyond(x + wx * best, hx);
  const dy = beyond(y + wy * best, hy);
  const dz = beyond(z + wz * best, hz);
  return { t: best, distance: Math.sqrt(dx * dx + dy * dy + dz * dz) };
}

function turnsOf(at: number, way: number, half: number, count: number): number {
  const enter = (-half - at) / way;
  const leave = (half - at) / way;
  let next = count;
  if (enter > 0 && enter < 1) turns[next++] = enter;
  if (leave > 0 && leave < 1) turns[next++] = leave;
  return next;
}

function sortFirst(count: number): void {
  for (let i = 1; i < count; i++) {
    const value = turns[i] as number;
    let k = i - 1;
    while (k >= 0 && (turns[k] as number) > value) {
      turns[k + 1] = turns[k] as number;
      k -= 1;
    }
    turns[k + 1] = value;
  }
}

/** How far a coordinate stands out of −half … half; 0 within. Signed. */
const beyond = (value: number, half: number): number => (value > half ? value - half : value < -half ? value + half : 0);

/** Half the slope of the squared distance along one axis. */
const slope = (at: number, way: number, half: number, t: number): number => beyond(at + way * t, half) * way;

/** False only where a segment stays further than `by` from a box: its faces are moved out by that, so corners stand out further. */
export function mayComeWithin(from: Vec3, to: Vec3, { center, axes, half }: Box, by: number): boolean {
  const x = from[0] - center[0];
  const y = from[1] - center[1];
  const z = from[2] - center[2];
  const wx = to[0] - from[0];
  const wy = to[1] - from[1];
  const wz = to[2] - from[2];
  let enter = 0;
  let leave = 1;
  for (let k = 0; k < 3; k++) {
    const axis = axes[k] as Vec3;
    const reach = (half[k] as number) + by;
    const at = x * axis[0] + y * axis[1] + z * axis[2];
    const way = wx * axis[0] + wy * axis[1] + wz * axis[2];
    if (way === 0) {
      if (at > reach || at < -reach) return false;
      continue;
    }
    const near = (-reach - at) / way;
    const far = (reach - at) / way;
    if (way > 0) {
      if (near > enter) enter = near;
      if (far < leave) leave = far;
    } else {
      if (far > enter) enter = far;
      if (near < leave) leave = near;
    }
    if (enter > leave) return false;
  }
  return true;
}
