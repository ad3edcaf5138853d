import type { Axle } from '../../records/index.js';
import { NO_LOAD } from './load.js';
import { rectangular, type UncertaintySource } from './uncertainty.js';
import { nothingWeighed } from './vehicle-load.js';

/** A stated share of a group's load: ± 2 % of that load, by wear, levelling and friction. Common practice, no source. */
const SHARE_HALF_WIDTH = 0.02;

/**
 * What a stated share leaves unknown of a load that statics handed down, `axlesKg`: what one axle of the group has more, its partners have
 * less. Axles that were weighed each for themselves need none of it.
 */
export function loadShareSources(axles: readonly Axle[], axlesKg: readonly number[]): readonly UncertaintySource[] {
  return axles.flatMap((axle, at): UncertaintySource[] => {
    const partner = axles.findIndex((one) => one.id === axle.share?.with);
    const own = axlesKg[at];
    const others = axlesKg[partner];
    if (own === undefined || others === undefined || own === 0 || others === 0) return [];
    const kg = rectangular(SHARE_HALF_WIDTH) * (own + others);
    const moved = axles.map((_, i) => (i === at ? kg : i === partner ? -kg : 0));
    const weighed = { ...nothingWeighed(axles), axlesKg: moved };
    return [{ name: `load share of ${axle.id} with ${axle.share?.with}`, what: { weighed, placed: NO_LOAD, heightKgMm: 0 } }];
  });
}
