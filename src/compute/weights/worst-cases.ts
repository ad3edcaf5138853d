import { conditionFigure, type Judging } from './conditions.js';
import { plus } from './load.js';
import { type Gauge, gaugeOf, gauges, loadRangeOf, type SearchState } from './search-states.js';
import type { AxleLoad, ConditionFigure } from './types.js';
import { solveAxleLoads } from './vehicle-load.js';
import { worstLoading } from './worst.js';

/** The worst that one axle or one end of it may come to carry, the vehicle standing in one way. */
export interface WorstCase {
  readonly gauge: Gauge;
  readonly state: SearchState;
  readonly figure: ConditionFigure;
  readonly loadKg: number;
  readonly uncertaintyKg: number;
  /** Of the axle's limit, or half of it for an end; absent where it has none. */
  readonly marginKg?: number;
}

export interface Search {
  readonly cases: readonly WorstCase[];
  /** Ways of standing that no load is looked for in: an axle is over with one of its axles up before a bay is loaded. */
  readonly shut: readonly SearchState[];
  readonly open: readonly SearchState[];
}

/** The worst loading of every axle and every end, in each way that the vehicle may stand. */
export function worstCases(judging: Judging, states: readonly SearchState[]): Search {
  const { axles } = judging.model.shell.chassis;
  const shut = states.filter((state) => state.lifted.size > 0 && isOverUnloaded(judging, state));
  const open = states.filter((state) => !shut.includes(state));
  const cases = open.flatMap((state) => gauges(axles, state.lifted).map((gauge) => worstCase(judging, state, gauge)));
  return { cases: cases.filter((one) => one !== undefined), shut, open };
}

function worstCase(judging: Judging, state: SearchState, gauge: Gauge): WorstCase | undefined {
  const { model, unladen, ratings } = judging;
  const { sharedAs } = unladen.vehicleLoad;
  if (!sharedAs) return undefined;
  const found = conditionFigure(judging, worstLoading(model, unladen, sharedAs, state, gauge));
  const load = found.axles[gauge.axle] as AxleLoad;
  const limitKg = ratings[gauge.axle]?.limitKg;
  const [loadKg, uncertaintyKg] =
    gauge.end === undefined
      ? [load.loadKg, load.uncertaintyKg]
      : gauge.end === 'left'
        ? [load.leftKg ?? 0, load.leftUncertaintyKg ?? 0]
        : [load.rightKg ?? 0, load.rightUncertaintyKg ?? 0];
  const mayKg = limitKg === undefined ? undefined : gauge.end === undefined ? limitKg : limitKg / 2;
  const figure = { ...found, worstFor: load.axle, ...(gauge.end === undefined ? {} : { worstEnd: gauge.end }) };
  return { gauge, state, figure, loadKg, uncertaintyKg, ...(mayKg === undefined ? {} : { marginKg: mayKg - loadKg }) };
}

/** Over its rating with seats and tanks at some level and every bay empty. */
function isOverUnloaded({ model, unladen, ratings }: Judging, state: SearchState): boolean {
  const { axles } = model.shell.chassis;
  const { sharedAs } = unladen.vehicleLoad;
  if (!sharedAs) return true;
  const base = solveAxleLoads(
    { ...unladen.vehicleLoad, placed: plus(unladen.vehicleLoad.placed, state.moved) },
    axles,
    state.axleModel,
  );
  const choices = state.choices.filter((choice) => choice.kind !== 'bay');
  return gauges(axles, state.lifted).some((gauge) => {
    const limitKg = ratings[gauge.axle]?.limitKg;
    if (limitKg === undefined) return false;
    const { most } = loadRangeOf(choices, gaugeOf(state.axleModel, sharedAs, gauge));
    const at = gauge.axle;
    const kg = gauge.end === undefined ? base.axlesKg[at] : gauge.end === 'left' ? base.leftKg[at] : base.rightKg[at];
    return (kg ?? 0) + most > (gauge.end === undefined ? limitKg : limitKg / 2) + 1e-6;
  });
}

/**
 * For every axle the case with the least left and of its ends that with the least left: all axles down first, then, where it is a way to
 * drive, with one up.
 */
export function hardestCases({ cases }: Search, axles: number): readonly WorstCase[] {
  const least = (some: readonly WorstCase[]): readonly WorstCase[] => {
    const room = (one: WorstCase): number => one.marginKg ?? -one.loadKg;
    const found = some.reduce<WorstCase | undefined>((best, one) => (best && room(best) <= room(one) ? best : one), undefined);
    return found ? [found] : [];
  };
  return [false, true].flatMap((up) =>
    Array.from({ length: axles }, (_, at) =>
      cases.filter((one) => one.gauge.axle === at && one.state.lifted.size > 0 === up),
    ).flatMap((own) => [
      ...least(own.filter((one) => one.gauge.end === undefined)),
      ...least(own.filter((one) => one.gauge.end !== undefined)),
    ]),
  );
}
