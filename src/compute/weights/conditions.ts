import type { Model } from '../../model/shell.js';
import type { Axle } from '../../records/index.js';
import { type AxleModel, axleModelOf, reactions } from './axle-reactions.js';
import { loadShareSources } from './load-share.js';
import type { Loading } from './loadings.js';
import type { Unladen } from './normalise.js';
import type { AxleLoad, AxleRating, ConditionFigure, EndContributions } from './types.js';
import { combine, contributions, type Expanded, type UncertaintySource, verdictOf, xUncertaintyMm } from './uncertainty.js';
import { carrying, type StandingLoad, solveAxleLoads } from './vehicle-load.js';

/** What a condition is judged by. `judged` false: nothing weighed to judge by, loads are those of the recorded shell alone. */
export interface Judging {
  readonly model: Model;
  readonly ratings: readonly AxleRating[];
  readonly unladen: Unladen;
  readonly judged: boolean;
}

/** Axle loads of one loading condition against their limits. */
export function conditionFigure(judging: Judging, loading: Loading): ConditionFigure {
  const { axles } = judging.model.shell.chassis;
  const axleModel = axleModelFor(axles, loading.lifted);
  const vehicleLoad = carrying(judging.unladen.vehicleLoad, loading.load);
  const standing = solveAxleLoads(vehicleLoad, axles, axleModel);
  const placedKg = axleModel ? reactions(axleModel, vehicleLoad.placed) : [];
  const shares = loading.lifted.size === 0 ? loadShareSources(axles, placedKg) : [];
  return figureOf(judging, loading, standing, [...judging.unladen.sources, ...loading.sources, ...shares], axleModel);
}

export const axleModelFor = (axles: readonly Axle[], lifted: ReadonlySet<string> = new Set()): AxleModel | undefined => {
  const found = axleModelOf(axles, lifted);
  return 'axleModel' in found ? found.axleModel : undefined;
};

export function figureOf(
  { model, ratings, judged, unladen }: Judging,
  loading: Pick<Loading, 'name' | 'kind' | 'holds' | 'lifted'>,
  standing: StandingLoad,
  sources: readonly UncertaintySource[],
  axleModel: AxleModel | undefined,
): ConditionFigure {
  const { axles, gvwrKg } = model.shell.chassis;
  const sharedAs = unladen.vehicleLoad.sharedAs;
  const expanded = combine(sources, axles, axleModel, sharedAs);
  const loads = standing.axlesKg.map((loadKg, i): AxleLoad => {
    const axle = axles[i] as Axle;
    const limitKg = ratings[i]?.limitKg;
    const uncertaintyKg = expanded.axlesKg[i] ?? 0;
    const marginKg = limitKg === undefined || !judged ? undefined : limitKg - loadKg;
    const [leftKg, rightKg] = [standing.leftKg[i], standing.rightKg[i]];
    const [leftUncertaintyKg, rightUncertaintyKg] = [expanded.leftKg[i], expanded.rightKg[i]];
    return {
      axle: axle.id,
      loadKg,
      ...(limitKg === undefined ? {} : { limitKg }),
      ...(marginKg === undefined ? {} : { marginKg }),
      uncertaintyKg,
      verdict: verdictOf(marginKg, uncertaintyKg),
      ...(leftKg === undefined ? {} : { leftKg }),
      ...(rightKg === undefined ? {} : { rightKg }),
      ...(leftUncertaintyKg === undefined ? {} : { leftUncertaintyKg }),
      ...(rightUncertaintyKg === undefined ? {} : { rightUncertaintyKg }),
      lifted: loading.lifted.has(axle.id),
    };
  });
  const totalKg = standing.total.massKg;
  const gvwrMarginKg = gvwrKg === undefined || !judged ? undefined : gvwrKg - totalKg;
  const steerKg = steerLoad(axles, loads);
  const centroidUncertaintyMm = xUncertaintyMm(sources, axles, totalKg, standing.centroid[0]);
  return {
    name: loading.name,
    kind: loading.kind,
    certified: loading.kind === 'standard' || loading.kind === 'own',
    holds: loading.holds,
    totalKg,
    centroid: standing.centroid,
    ...(centroidUncertaintyMm === undefined ? {} : { centroidUncertaintyMm }),
    ...(gvwrMarginKg === undefined ? {} : { gvwrMarginKg }),
    uncertaintyKg: expanded.totalKg,
    verdict: verdictOf(gvwrMarginKg, expanded.totalKg),
    axles: loads,
    ...(steerKg === undefined || totalKg <= 0 ? {} : { steerShare: steerKg / totalKg }),
    contributions: contributions(expanded, tightest(loads)),
    ...endContributions(expanded, loads),
  };
}

/** The end with the least left of half the axle's limit, and what it is uncertain by. */
function endContributions(expanded: Expanded, loads: readonly AxleLoad[]): Pick<ConditionFigure, 'endContributions'> {
  let least = Number.POSITIVE_INFINITY;
  let found: EndContributions | undefined;
  loads.forEach((load, i) => {
    for (const end of ['left', 'right'] as const) {
      const kg = end === 'left' ? load.leftKg : load.rightKg;
      if (load.limitKg === undefined || kg === undefined || load.lifted || load.limitKg / 2 - kg >= least) continue;
      least = load.limitKg / 2 - kg;
      const column = loads.length + 1 + (end === 'left' ? 0 : loads.length) + i;
      found = { axle: load.axle, end, contributions: contributions(expanded, column) };
    }
  });
  return found && found.contributions.length > 0 ? { endContributions: found } : {};
}

/** The axle with the least margin; the last column (the total) where none has one. */
function tightest(loads: readonly AxleLoad[]): number {
  let at = loads.length;
  loads.forEach((load, i) => {
    if (load.marginKg !== undefined && load.marginKg < (loads[at]?.marginKg ?? Number.POSITIVE_INFINITY)) at = i;
  });
  return at;
}

/** Least share of the total that the steered axles should carry: a light front axle steers and brakes badly. See weight.steer-share. */
export const LEAST_STEER_SHARE = 0.2;

/** Which axles steer: those marked so, else the front one. */
export function steers(axles: readonly Axle[]): readonly boolean[] {
  const any = axles.some((axle) => axle.steered);
  return axles.map((axle, i) => (any ? axle.steered : i === 0));
}

function steerLoad(axles: readonly Axle[], loads: readonly AxleLoad[]): number | undefined {
  if (loads.length === 0) return undefined;
  const steered = steers(axles);
  return loads.reduce((sum, { loadKg }, i) => sum + (steered[i] ? loadKg : 0), 0);
}
