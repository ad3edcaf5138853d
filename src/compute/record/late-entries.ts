import type { Shell } from '../../model/shell.js';
import type { RecordBase } from '../../model/source.js';
import { dayOf, daysBetween } from '../../quantity/day.js';

/** A record that came into the history long after what it tells of. */
export interface LateEntry {
  readonly record: RecordBase;
  /** Day of the event, as the record has it. */
  readonly event: string;
  /** Day of the first commit that has the record. */
  readonly entered: string;
  readonly days: number;
}

/**
 * Records whose event lies more than `mostDays` before their first commit. `entered`: id → date of that commit. A record without an
 * event's date, or in no commit yet, is not judged; nor is one planned ahead of its event.
 */
export function lateEntries(shell: Shell, entered: ReadonlyMap<string, string>, mostDays: number): readonly LateEntry[] {
  return eventsOf(shell).flatMap(({ record, event }) => {
    const date = entered.get(record.id);
    if (date === undefined) return [];
    const days = daysBetween(event, date);
    return days > mostDays ? [{ record, event: dayOf(event), entered: dayOf(date), days }] : [];
  });
}

/** What happened on a day, by the record's own word. */
export function eventsOf(shell: Shell): readonly { readonly record: RecordBase; readonly event: string }[] {
  const dated = (records: readonly RecordBase[]) =>
    records.flatMap((record) => (record.date === undefined ? [] : [{ record, event: record.date }]));
  return [
    ...dated(shell.welds),
    ...dated(shell.openings),
    ...dated(shell.clamps),
    ...dated(shell.runs),
    ...dated(shell.tickets),
    ...dated(shell.tests),
    ...shell.panels.flatMap((record) => {
      const event = record.fixing?.applied ?? record.date;
      return event === undefined ? [] : [{ record, event }];
    }),
    ...shell.findings.map((record) => ({ record, event: record.raised })),
    ...shell.photos.flatMap((record) => (record.taken === undefined ? [] : [{ record, event: record.taken }])),
    ...dated(shell.amendments),
  ];
}
