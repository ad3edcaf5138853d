import type { Axle } from '../../records/index.js';
import type { AxleRating } from './types.js';
import { axleTyresKg, hasDuals } from './tyre-loads.js';

/**
 * Rating of an axle: the least of GAWR, tyres, wheels and suspension, of those that are on record (49 CFR 571.3 has the GAWR as
 * that of the axle system at the ground; 571.120 S5.1.2 holds the tyres to it). What is not on record is left out, never guessed.
 */
export function axleRating(axle: Axle): AxleRating {
  const tyresKg = axleTyresKg(axle);
  // `wheels` is the rating stamped on one wheel.
  const wheelsKg = axle.wheelsKg === undefined ? undefined : axle.wheelsKg * wheelCount(axle);
  const known = (
    [
      ['gawr', axle.gawrKg],
      ['tyres', tyresKg],
      ['wheels', wheelsKg],
      ['suspension', axle.suspensionKg],
    ] as const
  ).filter((pair): pair is [(typeof pair)[0], number] => pair[1] !== undefined);
  const least = known.reduce<(typeof known)[number] | undefined>((low, one) => (low && low[1] <= one[1] ? low : one), undefined);
  return {
    axle: axle.id,
    ...(axle.gawrKg === undefined ? {} : { gawrKg: axle.gawrKg }),
    ...(tyresKg === undefined ? {} : { tyresKg }),
    ...(wheelsKg === undefined ? {} : { wheelsKg }),
    ...(axle.suspensionKg === undefined ? {} : { suspensionKg: axle.suspensionKg }),
    ...(least ? { limitKg: least[1], limitedBy: least[0] } : {}),
  };
}

/** Wheels on an axle: one to a tyre. */
const wheelCount = (axle: Axle): number => axle.tyres?.count ?? (hasDuals(axle) ? 4 : 2);
