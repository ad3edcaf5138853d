import { MM_PER_IN } from '../../quantity/units.js';

/**
 * Least leg of a fillet for a base metal thickness, mm: base to 1/4 in 1/8, to 1/2 in 3/16, to 3/4 in 1/4, above 5/16; never more
 * than the part is thick. AWS D1.1 Table 5.7/7.7 (steel), unverified citation; the aluminium code's own table is not confirmed.
 */
export function leastFilletMm(baseMm: number): number {
  const inches = baseMm / MM_PER_IN;
  const legIn = inches <= 0.25 ? 1 / 8 : inches <= 0.5 ? 3 / 16 : inches <= 0.75 ? 1 / 4 : 5 / 16;
  return Math.min(legIn * MM_PER_IN, baseMm);
}
