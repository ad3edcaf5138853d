import type { Model } from '../../model/shell.js';
import { stageOrder } from './built.js';
import type { AxleBudget, AxleLoad, AxleRating, ConditionFigure } from './types.js';

/** Kept unallocated, of each axle's rating: before the interior is fixed, and after. Common practice, no source. */
export const RESERVE_BEFORE = 0.1;
export const RESERVE_AFTER = 0.05;

/** The reserve to keep now: the interior is fixed once the last stage has been weighed or signed off. */
export function reserveOf(model: Model, weighedStage: string | undefined): number {
  const last = model.library.stages.length - 1;
  const signed = model.shell.signoffs.some((signoff) => stageOrder(model, signoff.stage) === last);
  return last >= 0 && (signed || stageOrder(model, weighedStage) === last) ? RESERVE_AFTER : RESERVE_BEFORE;
}

/**
 * What is left for the next trade on each axle and end, in the standard condition in which that axle has the least left, after the
 * reserve and after what is not known of the load.
 */
export function budget(
  conditions: readonly ConditionFigure[],
  ratings: readonly AxleRating[],
  reserve: number,
): readonly AxleBudget[] {
  return ratings.flatMap((rating): AxleBudget[] => {
    let tightest: { readonly name: string; readonly load: AxleLoad; readonly marginKg: number } | undefined;
    for (const condition of conditions) {
      if (condition.kind !== 'standard') continue;
      const load = condition.axles.find((one) => one.axle === rating.axle);
      if (load?.marginKg === undefined || (tightest && load.marginKg >= tightest.marginKg)) continue;
      tightest = { name: condition.name, load, marginKg: load.marginKg };
    }
    if (!tightest || rating.limitKg === undefined) return [];
    const reserveKg = reserve * (rating.gawrKg ?? rating.limitKg);
    const { uncertaintyKg } = tightest.load;
    const endKg = (rating.limitKg - reserveKg - uncertaintyKg) / 2;
    const { leftKg, rightKg } = tightest.load;
    return [
      {
        axle: rating.axle,
        condition: tightest.name,
        reserveKg,
        uncertaintyKg,
        leftKg: tightest.marginKg - uncertaintyKg - reserveKg,
        ...(leftKg === undefined ? {} : { leftEndKg: endKg - leftKg }),
        ...(rightKg === undefined ? {} : { rightEndKg: endKg - rightKg }),
      },
    ];
  });
}
