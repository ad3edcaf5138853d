import type { Point } from '../scene.js';
import type { PlacedPoint } from './marks.js';

/** So many welds within so small a circle are crowded: their numbers would stand away from them, mm on the sheet. */
const CROWD = 4;
const CROWD_RADIUS_MM = 7;

/** Crowded places, the most crowded first; each weld belongs to one of them at most. */
export function crowds(placed: readonly PlacedPoint[]): readonly (readonly PlacedPoint[])[] {
  let left = [...placed];
  const found: (readonly PlacedPoint[])[] = [];
  for (;;) {
    const near = left.map((one) => left.filter((other) => pointDistance(one.at, other.at) <= CROWD_RADIUS_MM));
    const most = near.reduce<readonly PlacedPoint[]>((best, list) => (list.length > best.length ? list : best), []);
    if (most.length < CROWD) return found;
    found.push(most);
    left = left.filter((one) => !most.includes(one));
  }
}

export const pointDistance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
