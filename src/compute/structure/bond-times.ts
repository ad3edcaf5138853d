import type { Bond } from '../../records/index.js';

/** Times of a bond that are past what the adhesive allows, s: what was, and the limit. */
export interface BondTimes {
  /** Closed too late after spreading. */
  readonly open?: readonly [wasS: number, mostS: number];
  /** Loaded too early after closing. */
  readonly cure?: readonly [wasS: number, leastS: number];
}

export function bondTimes(bond: Partial<Bond> | undefined): BondTimes {
  const { openTimeS, openTimeLimitS, cureS, cureLeastS } = bond ?? {};
  return {
    ...(openTimeS !== undefined && openTimeLimitS !== undefined && openTimeS > openTimeLimitS
      ? { open: [openTimeS, openTimeLimitS] as const }
      : {}),
    ...(cureS !== undefined && cureLeastS !== undefined && cureS < cureLeastS ? { cure: [cureS, cureLeastS] as const } : {}),
  };
}
