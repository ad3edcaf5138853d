import type { Weights } from '../weights/types.js';
import type { Station } from './types.js';

const TRIAL_KG = 100;
/** Less than this, of 100 kg, is not called a load on an axle: it is what is left of rounding. */
const LEAST_KG = 0.01;

/** What the whole may still gain: the least GVWR margin of the standard conditions, kg. */
export function leftOfGvwr({ conditions }: Weights): number | undefined {
  const margins = conditions.filter((one) => one.kind === 'standard').map((one) => one.gvwrMarginKg);
  if (margins.length === 0 || margins.includes(undefined)) return undefined;
  return Math.min(...(margins as number[]));
}

/**
 * The influence lines with what each station may take alone: every axle keeps its reserve, and the whole its GVWR.
 * Worked: 300 kg left on an axle of which 100 kg at the station adds 60 kg: 500 kg.
 */
export function stations(weights: Weights): readonly Station[] {
  const axles = weights.ratings.map(({ axle }) => ({ axle, left: weights.budget.find((one) => one.axle === axle)?.leftKg }));
  const whole = leftOfGvwr(weights);
  return weights.influence.map(({ xMm, addsKg }): Station => {
    if (whole === undefined || axles.some(({ left }) => left === undefined)) return { xMm, addsKg };
    let [mostKg, limitedBy] = [Math.max(0, whole), 'GVWR'];
    for (const { axle, left } of axles) {
      const adds = addsKg[axle] ?? 0;
      if (adds < LEAST_KG) continue;
      const most = Math.max(0, ((left as number) / adds) * TRIAL_KG);
      if (most < mostKg) [mostKg, limitedBy] = [most, axle];
    }
    return { xMm, addsKg, mostKg, limitedBy };
  });
}
