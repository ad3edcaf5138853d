declare const DAY: unique symbol;

/** A calendar day as `2026-02-11` (ISO 8601). Days compare as text does: the earlier one is the lesser. */
export type Day = string & { readonly [DAY]: true };

/** The day of a date that may go on with a time of day; undefined where there is none. A due day counts whole: compare days, not dates. */
export function dayOf(date: string): Day;
export function dayOf(date: string | undefined): Day | undefined;
export function dayOf(date: string | undefined): Day | undefined {
  return date?.slice(0, 10) as Day | undefined;
}

const DAY_MS = 86_400_000;

/** Whole days from one date to another; negative where the second is earlier, NaN where one is no date. */
export const daysBetween = (from: string, to: string): number =>
  Math.round((Date.parse(`${dayOf(to)}T00:00:00Z`) - Date.parse(`${dayOf(from)}T00:00:00Z`)) / DAY_MS);
