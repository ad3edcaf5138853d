import type { Model } from '../../model/shell.js';
import type { Judging } from './conditions.js';
import { loadAt, plus } from './load.js';
import { gaugeOf, gauges, loadRangeOf } from './search-states.js';
import type { LoadLine } from './types.js';
import { hasDuals } from './tyre-loads.js';
import { solveAxleLoads } from './vehicle-load.js';
import type { Search } from './worst-cases.js';

/**
 * Every axle and every end as a straight line in what is put on: load = `baseKg` + Σ mass · (perKg + perKgMmX · x + perKgMmY · y). The base has
 * every tank and seat at the level that loads this gauge most, and all bays empty. Plain numbers, so that a page without the program can add up.
 */
export function loadLines(judging: Judging, { open, cases }: Search): readonly LoadLine[] {
  const { model, unladen, ratings } = judging;
  const { axles } = model.shell.chassis;
  const { sharedAs } = unladen.vehicleLoad;
  if (!sharedAs) return [];
  return open.flatMap((state) => {
    const vehicleLoad = { ...unladen.vehicleLoad, placed: plus(unladen.vehicleLoad.placed, state.moved) };
    const base = solveAxleLoads(vehicleLoad, axles, state.axleModel);
    const others = state.choices.filter((choice) => choice.kind !== 'bay');
    return gauges(axles, state.lifted).map((gauge): LoadLine => {
      const adds = gaugeOf(state.axleModel, sharedAs, gauge);
      const at = gauge.axle;
      const kg = (gauge.end === undefined ? base.axlesKg[at] : gauge.end === 'left' ? base.leftKg[at] : base.rightKg[at]) ?? 0;
      const perKg = adds(loadAt(1, [0, 0, 0]));
      const known = cases.find((one) => one.gauge.name === gauge.name && one.state.words === state.words);
      const limitKg = ratings[at]?.limitKg;
      const half = gauge.end === undefined ? 1 : 0.5;
      const tyres = tyresOf(model, at, ratings[at]?.tyresKg, gauge.end !== undefined);
      return {
        axle: axles[at]?.id ?? '',
        ...(gauge.end === undefined ? {} : { end: gauge.end }),
        name: gauge.name,
        standing: state.words,
        baseKg: kg + loadRangeOf(others, adds).most,
        uncertaintyKg: known?.uncertaintyKg ?? 0,
        perKg,
        perKgMmX: adds(loadAt(1, [1, 0, 0])) - perKg,
        perKgMmY: adds(loadAt(1, [0, 1, 0])) - perKg,
        ...(limitKg === undefined ? {} : { limitKg: limitKg * half }),
        ...tyres,
      };
    });
  });
}

/** Tyres that stand under a gauge, and what one of them carries. */
function tyresOf({ shell }: Model, at: number, allKg: number | undefined, isEnd: boolean): Pick<LoadLine, 'tyres' | 'tyreKg'> {
  const axle = shell.chassis.axles[at];
  if (!axle || allKg === undefined) return {};
  const count = axle.tyres?.count ?? (hasDuals(axle) ? 4 : 2);
  return { tyres: isEnd ? count / 2 : count, tyreKg: allKg / count };
}
