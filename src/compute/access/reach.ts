import type { Reach } from './types.js';

/**
 * How far a hand gets, mm: a small woman (5th percentile), bare. Fingertip to wrist, to elbow, to shoulder.
 * ANSUR II public data, US Army Natick 2012 (check rows RCH-A01 to RCH-A03, RCH-P1). The choice of class is this project's own.
 */
export const REACH_MM = { hand: 165, forearm: 404, arm: 675 } as const;

/**
 * What an opening must let in, mm, smaller side first. After MIL-STD-1472 and MIL-HDBK-759, arm and hand access dimensions,
 * light clothing: flat hand RCH-M01, arm to elbow RCH-M05, arm to shoulder RCH-M06; unverified citation, unsure by about 5 mm.
 * A hand rolled together needs 95 square there; 90 is let in within that doubt (RCH-P3).
 */
const FLAT_HAND_MM = [55, 100] as const;
const ROLLED_HAND_MM = 90;
const FOREARM_MM = [100, 115] as const;
const ARM_MM = 125;

/**
 * Half of what must be clear across for a hand to go along a way, mm: the narrow side of the opening for a flat hand (RCH-M01).
 * The last of the way is a fingertip’s, from the knuckles on: RCH-A04, small woman.
 */
export const HAND_RADIUS_MM = FLAT_HAND_MM[0] / 2;
export const FINGER_MM = 63;

/**
 * Furthest that a hand closed on a tool gets, mm, to the middle of its grip: to the shoulder and to the elbow RCH-A06, RCH-A05 (RCH-P2);
 * to the wrist the hand less the part before the grip, RCH-A03 − (RCH-A02 − RCH-A05). It needs RCH-M03 to go in: 95 square.
 */
const GRIP_MM = { arm: 561, forearm: 290, hand: 51 } as const;
const TOOL_MM = 95;

/**
 * Two hands: RCH-M09 to 490 deep, 125 high and 200 wide or three quarters of the depth; RCH-M10 two arms to the shoulders, 500 × 125.
 * MIL-STD-1472 and MIL-HDBK-759, light clothing, unverified citation.
 */
const TWO_HANDS_MM = { high: 125, wide: 200, share: 0.75, deepest: 490, shoulders: 500 } as const;

export type Admits = 'nothing' | 'hand' | 'forearm' | 'arm';

/** The most of an arm that a rectangular opening lets in. A finger hole lets no hand in, and a finger mends nothing. */
export function admits(openingMm: readonly [number, number]): Admits {
  const small = Math.min(...openingMm);
  const large = Math.max(...openingMm);
  if (small >= ARM_MM) return 'arm';
  if (small >= FOREARM_MM[0] && large >= FOREARM_MM[1]) return 'forearm';
  if (small >= ROLLED_HAND_MM || (small >= FLAT_HAND_MM[0] && large >= FLAT_HAND_MM[1])) return 'hand';
  return 'nothing';
}

/** Furthest that can be reached through an opening that lets so much in, mm. */
export const limitMm = (admitted: Admits): number => (admitted === 'nothing' ? 0 : REACH_MM[admitted]);

/** By hand, to the forearm, to the arm, or beyond what the opening or the arm allows. */
export function reachOf(distanceMm: number, admitted: Admits): Reach {
  if (distanceMm > limitMm(admitted)) return 'beyond';
  if (distanceMm <= REACH_MM.hand) return 'hand';
  return distanceMm <= REACH_MM.forearm ? 'forearm' : 'arm';
}

/** Whether a hand that holds a tool gets so far through an opening. */
export function reachesWithTool(distanceMm: number, openingMm: readonly [number, number]): boolean {
  const admitted = admits(openingMm);
  return admitted !== 'nothing' && Math.min(...openingMm) >= TOOL_MM && distanceMm <= GRIP_MM[admitted];
}

/** Whether both hands get so far through an opening. */
export function reachesWithBothHands(distanceMm: number, openingMm: readonly [number, number]): boolean {
  const { high, wide, share, deepest, shoulders } = TWO_HANDS_MM;
  if (Math.min(...openingMm) < high) return false;
  const width = Math.max(...openingMm);
  if (width >= shoulders) return distanceMm <= REACH_MM.arm;
  return distanceMm <= deepest && width >= Math.max(wide, share * distanceMm);
}
