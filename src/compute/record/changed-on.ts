import type { Change } from '../../model/changes.js';
import type { Model } from '../../model/shell.js';
import { type Day, dayOf } from '../../quantity/day.js';
import type { RecordBase, Run } from '../../records/index.js';

/** From when evidence counts for something, and why from then. */
export interface CountsFrom {
  readonly day: Day;
  /** The change that makes it so; absent where it is the day on which the thing was made. */
  readonly change?: Change;
  /** Id of what changed: the thing itself, or of a run its circuit or an end of it. */
  readonly of: string;
}

/**
 * The day from which a photo, test or inspection counts for a record: that of its last change of substance, or else of its own date. A run
 * also changes with its circuit (another size of wire) and with the places of its ends. Nothing where neither is known.
 */
export function countsFrom(model: Model, id: string): CountsFrom | undefined {
  const entry = model.shell.byId.get(id);
  const record = entry?.record as Partial<RecordBase> | undefined;
  const own = record?.date === undefined ? [] : [{ day: dayOf(record.date), of: id }];
  const run = entry?.kind === 'run' ? (entry.record as Run) : undefined;
  const ids = run ? [id, run.circuit, run.from, run.to] : [id];
  const changed = ids.flatMap((one): CountsFrom[] => {
    const change = one === undefined ? undefined : model.changes?.get(one);
    return change ? [{ day: dayOf(change.day), change, of: one as string }] : [];
  });
  return [...own, ...changed].reduce<CountsFrom | undefined>(
    (last, one) => (last && last.day >= one.day ? last : one),
    undefined,
  );
}

/** Whether evidence of that day shows the thing as it is now. Evidence without a day, or of a thing without one, is judged elsewhere. */
export function stillCounts(model: Model, id: string, day: string | undefined): boolean {
  const from = day === undefined ? undefined : countsFrom(model, id);
  return from === undefined || dayOf(day as string) >= from.day;
}
