import { add, cross, distance, lerp, scale, subtract, unit, type Vec3 } from '../../geometry/vector.js';
import type { HandWay, Ignored, Obstacles } from './obstacles.js';
import { distanceFromOpening, entryTowards, type PanelOpening, spreadTowards } from './opening.js';
import { FINGER_MM, HAND_RADIUS_MM, limitMm, reachesWithBothHands, reachesWithTool, reachOf } from './reach.js';
import type { PanelReach } from './types.js';

/** Panels further than this from a node are not told, mm: one third more than the longest reach counted. */
export const NEAR_MM = 1000;

/** The shortest way and nine spread over the opening. */
const MOST_ENTRIES = 10;
/** For what is long or large, so that its neighbouring places are tried as well; then the knuckles bend at the first only. */
export const FEW_ENTRIES = 4;

interface SightOptions {
  /** The record that is looked at: it is not in its own way. */
  readonly ignore?: Ignored;
  /** How well its place is known: reach is judged as if it lay so much further. */
  readonly toleranceMm?: number | undefined;
  /** Places of the opening to try. */
  readonly entries?: number | undefined;
}

/**
 * Whether and how a place behind a panel is reached: a hand as thick as a flat hand goes in half of that clear of the rim, straight or
 * a little bent at the knuckles, and a fingertip gets to the place. The class of reach is that of the shortest clear way made longer
 * by the place's tolerance; the distance told is from the opening to the place as recorded. Where no way is clear: what stands in
 * the straight one.
 */
export function reachThrough(opening: PanelOpening, target: Vec3, obstacles: Obstacles, options: SightOptions = {}): PanelReach {
  const wayMm = clearWay(opening, target, obstacles, options);
  return toldReach(opening, target, wayMm, obstacles, options);
}

/** What is told of a place whose shortest clear way is known; `undefined`: none is clear. */
export function toldReach(
  opening: PanelOpening,
  target: Vec3,
  wayMm: number | undefined,
  obstacles: Obstacles,
  { ignore, toleranceMm = 0 }: SightOptions = {},
): PanelReach {
  const panel = opening.panel.id;
  const { approach } = opening;
  const distanceMm = distanceFromOpening(target, opening);
  const known = toleranceMm > 0 ? toleranceMm : undefined;
  if (wayMm !== undefined) {
    const judgedMm = wayMm + toleranceMm;
    const openingMm = [2 * opening.half[0], 2 * opening.half[1]] as const;
    return {
      panel,
      distanceMm: Math.max(distanceMm, wayMm - rimMm(opening, target)),
      reach: reachOf(judgedMm, opening.admits),
      blockedBy: NOTHING,
      toleranceMm: known,
      tool: reachesWithTool(judgedMm, openingMm) || undefined,
      twoHands: reachesWithBothHands(judgedMm, openingMm) || undefined,
      approach,
    };
  }
  const reach = reachOf(distanceMm + toleranceMm, opening.admits);
  // What stands in a way that is too long anyhow is not looked for.
  if (reach === 'beyond') return { panel, distanceMm, reach, blockedBy: NOTHING, toleranceMm: known, approach };
  const blockedBy = obstacles.inTheWay(wayFrom(entryTowards(target, opening), target), opening, ignore);
  // A clear straight way may yet be too long by the half hand at the rim.
  const tooLong = blockedBy.length === 0 && approach?.clear !== false;
  return { panel, distanceMm, reach: tooLong ? 'beyond' : reach, blockedBy, toleranceMm: known, approach };
}

const NOTHING: readonly string[] = [];

/** Length of the shortest clear way that the opening and the arm allow, mm; undefined where there is none. */
export function clearWay(
  opening: PanelOpening,
  target: Vec3,
  obstacles: Obstacles,
  { ignore, toleranceMm = 0, entries = MOST_ENTRIES }: SightOptions = {},
): number | undefined {
  if (opening.approach?.clear === false) return undefined;
  const limit = limitMm(opening.admits) - toleranceMm;
  const first = entryTowards(target, opening);
  const straightMm = distance(first, target);
  if (straightMm > limit) return undefined;
  const straight = wayFrom(first, target);
  if (obstacles.isClear(straight, opening, ignore)) return straightMm;
  const clear = (ways: readonly HandWay[]): number | undefined => {
    for (const way of ways) {
      const lengthMm = distance(way.start, way.hand) + distance(way.hand, target);
      if (lengthMm <= limit && obstacles.isClear(way, opening, ignore)) return lengthMm;
    }
    return undefined;
  };
  const bentMm = clear(bentWays(straight));
  if (bentMm !== undefined) return bentMm;
  for (const start of spreadTowards(target, opening, entries - 1)) {
    if (distance(start, target) > limit) break;
    const aside = wayFrom(start, target);
    const lengthMm = clear([aside]) ?? (entries === MOST_ENTRIES ? clear(bentWays(aside)) : undefined);
    if (lengthMm !== undefined) return lengthMm;
  }
  return undefined;
}

/** What the hand’s half thickness at the rim adds to the straight way, mm. */
const rimMm = (opening: PanelOpening, target: Vec3): number =>
  distance(entryTowards(target, opening), target) - distanceFromOpening(target, opening);

const bareLine = (start: Vec3, target: Vec3): HandWay => ({ start, hand: start, target, radiusMm: 0 });

/** Straight: the hand follows until the knuckles are a finger’s length off. */
function wayFrom(start: Vec3, target: Vec3): HandWay {
  const length = distance(start, target);
  if (length <= FINGER_MM) return bareLine(start, target);
  return { start, hand: lerp(start, target, 1 - FINGER_MM / length), target, radiusMm: HAND_RADIUS_MM };
}

/** Four ways with the hand half its thickness beside the straight one: a thing close to a wall is reached along the wall. */
function bentWays(straight: HandWay): readonly HandWay[] {
  if (straight.radiusMm === 0) return [];
  const along = unit(subtract(straight.target, straight.start));
  const aside = unit(cross(along, Math.abs(along[2]) < 0.7 ? [0, 0, 1] : [1, 0, 0]));
  const other = cross(along, aside);
  const sides = [aside, scale(aside, -1), other, scale(other, -1)];
  return sides.map((side) => ({ ...straight, hand: add(straight.hand, scale(side, HAND_RADIUS_MM)) }));
}

export const isClear = (one: Pick<PanelReach, 'reach' | 'blockedBy' | 'approach'>): boolean =>
  one.reach !== 'beyond' && one.blockedBy.length === 0 && one.approach?.clear !== false;

/** What stands in the way, before the panel and behind it, by id. */
export const standsInTheWay = (one: Pick<PanelReach, 'blockedBy' | 'approach'>): readonly string[] => [
  ...new Set([...(one.approach?.blockedBy ?? []), ...one.blockedBy]),
];

/** Clear before blocked, near enough before beyond, then nearest first. */
export function bestFirst(reaches: readonly PanelReach[]): readonly PanelReach[] {
  const rank = (one: PanelReach): number => (isClear(one) ? 0 : one.reach !== 'beyond' ? 1 : one.blockedBy.length === 0 ? 2 : 3);
  return [...reaches].sort((a, b) => rank(a) - rank(b) || a.distanceMm - b.distanceMm || (a.panel < b.panel ? -1 : 1));
}
