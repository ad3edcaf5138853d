import { dayOf, daysBetween } from '../../quantity/day.js';
import type { RecordBase, Shell } from '../../records/index.js';
import { kindOf } from '../../records/kinds.js';
import { listName } from '../../records/shell.js';
import { LISTED_KINDS } from '../../records/shell-lists.js';

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

/** What happened on a day, by the record's own word; the earliest first. */
export function eventsOf(shell: Shell): readonly { readonly record: RecordBase; readonly event: string }[] {
  const events = EVENTS.flatMap(({ kind, keys }) =>
    (shell[listName(kind)] as readonly RecordBase[]).flatMap((record) => {
      const event = keys.map((key) => at(record, key)).find((day) => day !== undefined);
      return event === undefined ? [] : [{ record, event }];
    }),
  );
  return events.sort((a, b) => (a.event < b.event ? -1 : a.event > b.event ? 1 : 0));
}

/** Kinds that tell of what happened on a day, each with the keys that may say when. */
const EVENTS = LISTED_KINDS.flatMap((kind) => {
  const { event: keys } = kindOf(kind).more;
  return keys === undefined ? [] : [{ kind, keys }];
});

/** `fixing.applied` of a panel. */
function at(record: unknown, key: string): string | undefined {
  let value: unknown = record;
  for (const step of key.split('.')) value = (value as Readonly<Record<string, unknown>> | undefined)?.[step];
  return value as string | undefined;
}
