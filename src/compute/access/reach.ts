import type { Reach } from './types.js';

/**
 * How far a hand gets, mm: a small woman (5th percentile), bare. Fingertip to wrist, to elbow, to shoulder.
 * ANSUR II public data, US Army Natick 2012 (check rows RCH-A01 to RCH-A03, RCH-P1). The choice of class is this project's own.
 */
export const REACH_MM = { hand: 165, forearm: 404, arm: 675 } as const;

/**
 * What an opening must let in, mm, smaller side first. After MIL-STD-1472 and MIL-HDBK-759, arm and hand access dimensions,
 * light clothing: flat hand RCH-M01, arm to elbow RCH-M05, arm to shoulder RCH-M06; from memory, unsure by about 5 mm.
 * A hand rolled together needs 95 square there; 90 is let in within that doubt (RCH-P3).
 */
const FLAT_HAND_MM = [55, 100] as const;
const ROLLED_HAND_MM = 90;
const FOREARM_MM = [100, 115] as const;
const ARM_MM = 125;

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
