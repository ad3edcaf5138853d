import type { Axle } from '../../records/index.js';
import type { AxleRating } from './types.js';
import { axleTyresKg, hasDuals } from './tyre-loads.js';

/**
 * Rating of an axle: the least of GAWR, tyres, wheels and suspension, of those that are on record (49 CFR 571.3 has the GAWR as
 * that of the axle system at the ground; 571.120 S5.1.2 holds the tyres to it). What is not on record is left out, never guessed.
 */
export function axleRating(axle: Axle): AxleRating {
  const tyresKg = axleTyresKg(axle);
  const wheelsKg = axleWheelsKg(axle);
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
    ...(wheelsKg === undefined || axle.wheelsBy === 'axle' ? {} : { wheelCount: wheelCount(axle) }),
    ...(axle.suspensionKg === undefined ? {} : { suspensionKg: axle.suspensionKg }),
    ...(least ? { limitKg: least[1], limitedBy: least[0] } : {}),
  };
}

/** What all wheels of an axle may carry together, kg: each wheel’s stamp by their number, or the axle’s own where it is rated as a whole. */
function axleWheelsKg(axle: Axle): number | undefined {
  if (axle.wheelsKg === undefined) return undefined;
  return axle.wheelsBy === 'axle' ? axle.wheelsKg : axle.wheelsKg * wheelCount(axle);
}

/** Wheels on an axle: one to a tyre. */
export const wheelCount = (axle: Axle): number => axle.tyres?.count ?? (hasDuals(axle) ? 4 : 2);
