import type { RecordThen } from './records-in.js';

export type RecordPath = readonly (string | number)[];

/** One field that differs. `from` absent: it was not there; `to` absent: it is there no more. */
export interface FieldChange {
  readonly path: RecordPath;
  readonly from?: unknown;
  readonly to?: unknown;
}

/** One record that differs. */
export interface RecordChange {
  readonly kind: string;
  readonly id: string;
  readonly change: 'added' | 'changed' | 'removed';
  /** Of a changed one. */
  readonly fields: readonly FieldChange[];
  /** As it was, and as it is; each where it was there. */
  readonly old?: RecordThen;
  readonly now?: RecordThen;
}

/** What differs between two states, by record and field: where a record stands, in what order and between what comments does not count. */
export function recordDifferences(before: readonly RecordThen[], after: readonly RecordThen[]): readonly RecordChange[] {
  const was = new Map(before.map((one) => [nameOf(one), one]));
  const is = new Map(after.map((one) => [nameOf(one), one]));
  const changes: RecordChange[] = [];
  for (const [name, old] of was) {
    const now = is.get(name);
    if (!now) changes.push({ kind: old.kind, id: old.id, change: 'removed', fields: [], old });
    else {
      const fields = fieldChanges(old.data, now.data);
      if (fields.length > 0) changes.push({ kind: now.kind, id: now.id, change: 'changed', fields, old, now });
    }
  }
  for (const [name, now] of is)
    if (!was.has(name)) changes.push({ kind: now.kind, id: now.id, change: 'added', fields: [], now });
  return changes.sort((a, b) => order(a.kind, b.kind) || order(a.id, b.id));
}

const nameOf = ({ kind, identity }: RecordThen): string => `${kind} ${identity}`;

/** Ids as people count: W-2 before W-10. */
const COUNTING = new Intl.Collator('en', { numeric: true });
const order = (a: string, b: string): number => COUNTING.compare(a, b);

type Mapping = Readonly<Record<string, unknown>>;
const isMapping = (data: unknown): data is Mapping => typeof data === 'object' && data !== null && !Array.isArray(data);

/** Fields that differ between two versions of a record, as typed: `3/8 in` and `0.375 in` are two things that somebody wrote. */
export function fieldChanges(from: unknown, to: unknown, path: RecordPath = []): readonly FieldChange[] {
  if (isMapping(from) && isMapping(to)) {
    const keys = [...new Set([...Object.keys(from), ...Object.keys(to)])];
    return keys.flatMap((key) => fieldChanges(from[key], to[key], [...path, key]));
  }
  if (Array.isArray(from) && Array.isArray(to) && [...from, ...to].some(isMapping)) return itemChanges(from, to, path);
  if (JSON.stringify(from) === JSON.stringify(to)) return [];
  return [{ path, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) }];
}

/** Blocks of a list are the same where their ids are, else where their places are. */
function itemChanges(from: readonly unknown[], to: readonly unknown[], path: RecordPath): readonly FieldChange[] {
  const ids = (list: readonly unknown[]): readonly unknown[] => list.map((one) => (isMapping(one) ? one.id : undefined));
  const named = [...ids(from), ...ids(to)].every((id) => id !== undefined);
  if (!named) {
    return Array.from({ length: Math.max(from.length, to.length) }, (_, i) => fieldChanges(from[i], to[i], [...path, i])).flat();
  }
  const [was, is] = [from, to].map((list) => new Map(list.map((one) => [String((one as Mapping).id), one])));
  return [...new Set([...(was?.keys() ?? []), ...(is?.keys() ?? [])])].flatMap((id) =>
    fieldChanges(was?.get(id), is?.get(id), [...path, id]),
  );
}
