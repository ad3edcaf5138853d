import { countsFrom } from '../compute/record/changed-on.js';
import type { Model } from '../model/shell.js';
import { dayOf, daysBetween } from '../quantity/day.js';

/** What is to be known of a piece of evidence beside what it says. */
export interface EvidenceAge {
  /** It came into the history later than the shop allows. */
  readonly late?: { readonly entered: string; readonly days: number; readonly who: string };
  /** What it shows that has changed since: it no longer counts for these. */
  readonly changed: readonly { readonly id: string; readonly day: string }[];
  /** Runs and nodes that it is said to show and that were made after it: it shows something else. */
  readonly early: readonly { readonly id: string; readonly day: string }[];
}

/** A photo or test of these records and this day: entered late, or of before a change. */
export function evidenceAge(model: Model, id: string, of: readonly string[], date: string | undefined): EvidenceAge {
  if (date === undefined) return { changed: [], early: [] };
  const day = dayOf(date);
  const entry = model.entered?.get(id);
  const days = entry ? daysBetween(day, entry.date) : 0;
  const late =
    entry && days > model.shop.limits.lateEntryDays ? { late: { entered: dayOf(entry.date), days, who: entry.who } } : {};
  const shown = of.flatMap((one) =>
    model.shell.byId.get(one)?.kind === 'circuit'
      ? model.shell.runs.filter((run) => run.circuit === one).map((run) => run.id)
      : [one],
  );
  const later = shown.flatMap((one) => {
    const from = countsFrom(model, one);
    return from && from.day > day ? [{ id: one, day: from.day, change: from.change }] : [];
  });
  const bare = ({ id: one, day: since }: (typeof later)[number]) => ({ id: one, day: since });
  const isLine = (one: string): boolean => ['run', 'node'].includes(model.shell.byId.get(one)?.kind ?? '');
  return {
    ...late,
    changed: later.filter(({ change }) => change).map(bare),
    early: later.filter(({ id: one, change }) => !change && isLine(one)).map(bare),
  };
}
