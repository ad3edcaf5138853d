import type { Axle } from '../../records/index.js';

/** Axles that share load by a stated fraction act as one support at their share-weighted position. */
export interface AxleGroup {
  readonly axles: readonly { readonly axle: Axle; readonly share: number }[];
  readonly xMm: number;
  /** Sum of the members' spring rates, where each has one. */
  readonly springRateNM?: number;
}

export type Grouped = { readonly groups: readonly AxleGroup[] } | { readonly problem: string };

/** Fractions typed by both partners may differ by rounding. */
const SHARE_ROUNDING = 0.005;

/**
 * Puts axles on the road into groups, front to rear. `share: {with: drive, fraction: 0.42}` on the tag gives the tag 0.42 of
 * the group and the rest to the drive axle. An axle whose partner is lifted carries the whole group.
 */
export function axleGroups(axles: readonly Axle[]): Grouped {
  const parties = axles.map((axle) => [axle]);
  for (const axle of axles) {
    const own = parties.find((party) => party.includes(axle)) as Axle[];
    const other = parties.find((party) => party.some((one) => one.id === axle.share?.with));
    if (!other || other === own) continue;
    other.push(...own);
    parties.splice(parties.indexOf(own), 1);
  }
  const groups: AxleGroup[] = [];
  for (const party of parties) {
    const shares = sharesOf(party);
    if (typeof shares === 'string') return { problem: shares };
    const axlesOf = party.map((axle, i) => ({ axle, share: shares[i] as number }));
    const xMm = axlesOf.reduce((sum, { axle, share }) => sum + share * axle.xMm, 0);
    const rates = party.map((axle) => axle.springRateNM);
    const springs = rates.every((rate) => rate !== undefined) ? { springRateNM: rates.reduce((a, b) => a + b, 0) } : {};
    groups.push({ axles: axlesOf, xMm, ...springs });
  }
  return { groups: groups.sort((a, b) => a.xMm - b.xMm) };
}

function sharesOf(party: readonly Axle[]): readonly number[] | string {
  const stated = party.map((axle) =>
    party.some((one) => one !== axle && one.id === axle.share?.with) ? axle.share?.fraction : undefined,
  );
  const given = stated.reduce<number>((sum, one) => sum + (one ?? 0), 0);
  const names = party.map((axle) => axle.id).join(', ');
  if (stated.every((one) => one !== undefined) && Math.abs(given - 1) > SHARE_ROUNDING) {
    return `The shares of axles ${names} add to ${given.toFixed(2)}, expected 1: state the share of one of them only`;
  }
  if (given > 1 + SHARE_ROUNDING) return `The shares of axles ${names} add to ${given.toFixed(2)}, expected at most 1`;
  // One of them at most states none: each of the others joined by its own share.
  const shares = stated.map((one) => one ?? Math.max(0, 1 - given));
  const total = shares.reduce((sum, one) => sum + one, 0);
  return shares.map((one) => one / total);
}

/** The coefficients by which supports, front to rear, share a load. */
export interface SupportShares {
  readonly perKg: readonly number[];
  readonly perKgMm: readonly number[];
}
