import type { AxleGroup, SupportShares } from './axle-groups.js';

/**
 * A rigid body on three or more springs: each support gives R = k (a + b x), with the settlement a and the pitch b from
 *
 *     Σ k a + Σ k x b = m        Σ k x a + Σ k x² b = m x̄
 *
 * Assumes a frame stiff beside its springs, springs linear and unloaded at one level. Source: textbook statics of a rigid body on
 * elastic supports (equilibrium with two unknowns). Worked: three equal springs at 0, 1, 2 under 1000 at 0 give 5/6, 2/6, −1/6.
 */
export function springReactions(groups: readonly AxleGroup[]): SupportShares | { readonly problem: string } {
  const missing = groups.filter((group) => group.springRateNM === undefined);
  if (missing.length > 0) {
    const names = missing.flatMap((group) => group.axles.map(({ axle }) => axle.id)).join(', ');
    return {
      problem: `Axle loads are not determined by statics: ${groups.length} supports. Add \`share:\` to the axles that share load, or \`spring_rate:\` to each (missing on ${names})`,
    };
  }
  const rates = groups.map((group) => group.springRateNM as number);
  const total = rates.reduce((sum, k) => sum + k, 0);
  const first = groups.reduce((sum, { xMm }, i) => sum + (rates[i] as number) * xMm, 0);
  const mean = first / total;
  // About the stiffness centre the two equations separate: no digits are lost, and the pitch depends on the moment alone.
  const second = groups.reduce((sum, { xMm }, i) => sum + (rates[i] as number) * (xMm - mean) ** 2, 0);
  const slope = groups.map(({ xMm }, i) => ((rates[i] as number) * (xMm - mean)) / second);
  return {
    perKg: rates.map((k, i) => k / total - (slope[i] as number) * mean),
    perKgMm: slope,
  };
}
