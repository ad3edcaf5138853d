import type { Basis } from './basis.js';
import { axleModelFor, conditionFigure, figureOf, type Judging } from './conditions.js';
import { NO_LOAD } from './load.js';
import { liftedLoadings, ownLoadings, standardLoadings } from './loadings.js';
import type { Items } from './normalise.js';
import type { ConditionFigure } from './types.js';
import { solveAxleLoads } from './vehicle-load.js';
import { hardestCases, type Search } from './worst-cases.js';

/** As weighed, the named conditions, the shop's own, those with an axle up, and the worst for each axle and its fuller end, in that order. */
export function allConditions(judging: Judging, basis: Basis, items: Items, search: Search): readonly ConditionFigure[] {
  const { axles } = judging.model.shell.chassis;
  if (axles.length === 0) return [];
  const standard = standardLoadings(judging.model);
  const stated = [...standard, ...ownLoadings(judging.model, items), ...liftedLoadings(standard, axles)];
  return [
    ...asWeighed(judging, basis),
    ...stated.map((loading) => conditionFigure(judging, loading)),
    ...hardestCases(search, axles.length).map((one) => one.figure),
  ];
}

/** The basis ticket itself, as it stood on the scale. */
function asWeighed(judging: Judging, { survey }: Basis): readonly ConditionFigure[] {
  if (!survey) return [];
  const { axles } = judging.model.shell.chassis;
  const axleModel = axleModelFor(axles);
  const { vehicleLoad, sources } = survey.asWeighed;
  const standing = solveAxleLoads(
    { weighed: survey.weighed, placed: NO_LOAD, heightKgMm: vehicleLoad.heightKgMm },
    axles,
    axleModel,
  );
  const loading = {
    name: 'as weighed',
    kind: 'weighed',
    holds: `as on the scale for ticket ${survey.ticket.id}`,
    lifted: survey.lifted,
  } as const;
  return [figureOf(judging, loading, standing, sources, axleModel)];
}

export const heaviestStandard = (conditions: readonly ConditionFigure[]): ConditionFigure | undefined =>
  conditions
    .filter((one) => one.kind === 'standard' && one.axles.length > 0)
    .reduce<ConditionFigure | undefined>((most, one) => (most && most.totalKg >= one.totalKg ? most : one), undefined);
