import type { Model } from '../../model/shell.js';
import { stageOrder } from './built.js';
import type { AxleBudget, AxleRating, ConditionFigure, Weights } from './types.js';
import type { WorstCase } from './worst-cases.js';

/** Kept unallocated, of each axle's rating: before the interior is fixed, and after. Common practice, no source. */
const RESERVE_BEFORE = 0.1;
const RESERVE_AFTER = 0.05;

/** The reserve to keep now: the interior is fixed once the last stage has been weighed or signed off. */
export function reserveOf(model: Model, weighedStage: string | undefined): number {
  const last = model.library.stages.length - 1;
  const signed = model.shell.signoffs.some((signoff) => stageOrder(model, signoff.stage) === last);
  return last >= 0 && (signed || stageOrder(model, weighedStage) === last) ? RESERVE_AFTER : RESERVE_BEFORE;
}

/**
 * What is left for the next trade on each axle and end in the worst loading that was found for it, in any way that the vehicle may stand, after
 * the reserve and after what is not known of the load. Half of the reserve is an end's.
 */
export function budget(
  cases: readonly WorstCase[],
  conditions: readonly ConditionFigure[],
  ratings: readonly AxleRating[],
  reserve: number,
): readonly AxleBudget[] {
  return ratings.flatMap((rating, at): AxleBudget[] => {
    if (rating.limitKg === undefined) return [];
    const reserveKg = reserve * (rating.gawrKg ?? rating.limitKg);
    const own = cases.filter((one) => one.gauge.axle === at);
    const left = (end: WorstCase['gauge']['end']) => leastLeft(own, end, end === undefined ? reserveKg : reserveKg / 2);
    const [axle, leftEnd, rightEnd] = [left(undefined), left('left'), left('right')];
    if (!axle) return [];
    return [
      {
        axle: rating.axle,
        condition: nameOf(axle.worst, conditions),
        reserveKg,
        uncertaintyKg: axle.worst.uncertaintyKg,
        leftKg: axle.kg,
        ...(leftEnd ? { leftEndKg: leftEnd.kg, leftEndUncertaintyKg: leftEnd.worst.uncertaintyKg } : {}),
        ...(rightEnd ? { rightEndKg: rightEnd.kg, rightEndUncertaintyKg: rightEnd.worst.uncertaintyKg } : {}),
      },
    ];
  });
}

/** The standard condition that loads the axle alike, by its name; else what is in the worst one. */
function nameOf({ gauge, loadKg, figure }: WorstCase, conditions: readonly ConditionFigure[]): string {
  const same = conditions.find(
    (one) => one.kind === 'standard' && Math.abs((one.axles[gauge.axle]?.loadKg ?? Number.NaN) - loadKg) < 1e-6,
  );
  return same?.name ?? figure.holds;
}

function leastLeft(own: readonly WorstCase[], end: WorstCase['gauge']['end'], reserveKg: number) {
  return own
    .filter((one) => one.gauge.end === end && one.marginKg !== undefined)
    .map((worst) => ({ worst, kg: (worst.marginKg as number) - worst.uncertaintyKg - reserveKg }))
    .reduce<{ worst: WorstCase; kg: number } | undefined>((least, one) => (least && least.kg <= one.kg ? least : one), undefined);
}

/** What is left with an axle up, by axle and end, and how much of a kilogram at station x each takes: `perKg + perKgMm · x`. */
export function liftedMargins(
  cases: readonly WorstCase[],
  ratings: readonly AxleRating[],
  reserve: number,
): Weights['liftedMargins'] {
  return cases.flatMap(({ gauge, state, marginKg, uncertaintyKg }) => {
    if (state.lifted.size === 0 || marginKg === undefined) return [];
    const { gawrKg, limitKg = 0 } = ratings[gauge.axle] as AxleRating;
    // On the centre line half of a load goes to each end.
    const part = gauge.end === undefined ? 1 : 0.5;
    return [
      {
        name: `${gauge.name}, ${state.words}`,
        leftKg: marginKg - uncertaintyKg - part * reserve * (gawrKg ?? limitKg),
        perKg: part * (state.axleModel.perKg[gauge.axle] as number),
        perKgMm: part * (state.axleModel.perKgMm[gauge.axle] as number),
      },
    ];
  });
}
