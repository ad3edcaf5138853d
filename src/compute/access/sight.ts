import { dot, subtract, type Vec3 } from '../../geometry/vector.js';
import type { Obstacles } from './obstacles.js';
import { nearestOfOpening, type PanelOpening, startsTowards } from './opening.js';
import { limitMm, reachOf } from './reach.js';
import type { PanelReach } from './types.js';

/** Panels further than this from a node are not told, mm: one third more than the longest reach counted. */
export const NEAR_MM = 1000;

interface SightOptions {
  /** The record that is looked at: it is not in its own way. */
  readonly ignore?: string;
  /** Places of the opening to try. */
  readonly starts?: number;
}

/**
 * Whether and how a place behind a panel is reached. The distance is that of the shortest clear straight way through the opening
 * that the reach allows; where none is clear, the distance from the nearest place of the opening, and what stands in the way.
 */
export function reachThrough(
  opening: PanelOpening,
  target: Vec3,
  obstacles: Obstacles,
  { ignore, starts = 10 }: SightOptions = {},
): PanelReach {
  const straight = nearestOfOpening(target, opening);
  const straightMm = wayMm(straight, target);
  const limit = limitMm(opening.admits);
  let blockedBy = obstacles.between(straight, target, opening, ignore);
  const tell = (distanceMm: number, blockers: readonly string[]): PanelReach => ({
    panel: opening.panel.id,
    distanceMm,
    reach: reachOf(distanceMm, opening.admits),
    blockedBy: blockers,
  });
  if (blockedBy.length === 0 || straightMm > limit) return tell(straightMm, blockedBy);
  for (const start of startsTowards(target, opening, starts)) {
    const lengthMm = wayMm(start, target);
    if (lengthMm > limit) break;
    const blockers = obstacles.between(start, target, opening, ignore);
    if (blockers.length === 0) return tell(lengthMm, blockers);
    if (blockers.length < blockedBy.length) blockedBy = blockers;
  }
  return tell(straightMm, blockedBy);
}

/** Many millions of times on a large shell: a plain root is several times faster here than a guarded one. */
function wayMm(from: Vec3, to: Vec3): number {
  const way = subtract(to, from);
  return Math.sqrt(dot(way, way));
}

export const isClear = (reach: Pick<PanelReach, 'reach' | 'blockedBy'>): boolean =>
  reach.reach !== 'beyond' && reach.blockedBy.length === 0;

/** Clear before blocked, near enough before beyond, then nearest first. */
export function bestFirst(reaches: readonly PanelReach[]): readonly PanelReach[] {
  const rank = (one: PanelReach): number => (isClear(one) ? 0 : one.reach !== 'beyond' ? 1 : one.blockedBy.length === 0 ? 2 : 3);
  return [...reaches].sort((a, b) => rank(a) - rank(b) || a.distanceMm - b.distanceMm || (a.panel < b.panel ? -1 : 1));
}
