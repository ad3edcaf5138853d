import { type BuildCount, buildCounts } from '../model/planned.js';
import type { Model } from '../model/shell.js';
import type { RecordBase } from '../records/index.js';
import { type CoveredRecord, stageOf } from './coverage.js';

/** How far one stage is built, by its records. */
export interface StageBuild {
  /** Id in library/stages.yaml; null for records of no stage. */
  readonly stage: string | null;
  readonly kinds: readonly BuildCount[];
  /** Sums over the kinds. */
  readonly planned: number;
  readonly done: number;
}

/** All stages together. */
export function builtOfAll(model: Model): { readonly planned: number; readonly done: number } {
  const stages = buildProgress(model);
  const sum = (of: 'planned' | 'done'): number => stages.reduce((total, one) => total + one[of], 0);
  return { planned: sum('planned'), done: sum('done') };
}

/** What is planned and what is done, by stage in build order, then what is of no stage. A stage without records of what is built is left out. */
export function buildProgress(model: Model): readonly StageBuild[] {
  const { shell, library } = model;
  const records = [...shell.byId.values()].map(({ kind, record }): CoveredRecord => ({ kind, record: record as RecordBase }));
  return [...library.stages.map(({ id }) => id), null].flatMap((stage): readonly StageBuild[] => {
    const kinds = buildCounts(
      shell,
      records.filter((one) => (stageOf(model, one) ?? null) === stage),
    );
    const sum = (of: 'planned' | 'done'): number => kinds.reduce((total, kind) => total + kind[of], 0);
    return kinds.length === 0 ? [] : [{ stage, kinds, planned: sum('planned'), done: sum('done') }];
  });
}
