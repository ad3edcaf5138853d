import { withoutBlanks } from '../model/records.js';
import type { Schemas } from '../records/schema.js';
import type { Path } from '../source/source.js';
import type { ListPlace } from './append.js';
import type { Habits } from './cells.js';
import { valueAt } from './change.js';
import type { SheetHeader } from './headers.js';
import type { EntryKind } from './homes.js';
import type { IndexedRecord, RecordIndex } from './record-index.js';
import type { SheetFault } from './rows.js';
import { sameTyped, sameValue } from './same.js';
import type { SheetTable } from './sheet.js';
import { type Data, isData } from './yaml-text.js';

/** A sheet that is to be taken in, with all that decides how it is read. */
export interface SheetInput {
  readonly sheet: SheetTable;
  readonly heads: readonly SheetHeader[];
  readonly known: RecordIndex;
  readonly habits: Habits;
  /** Where new records go, where it was named: a file, of lists of lines a service. */
  readonly into?: string;
  /** A record may name another that is not there yet. */
  readonly ahead: boolean;
}

/** One value of a record that a sheet changes. */
export interface CellChange {
  readonly path: Path;
  readonly old: unknown;
  readonly new: unknown;
}

/** What taking a sheet in would do, row by row, whatever the sheet is of. */
export interface SheetPlan<K extends EntryKind = EntryKind> {
  readonly added: readonly {
    readonly kind: K;
    readonly id: string;
    readonly data: Data;
    readonly place: ListPlace;
    readonly row: number;
  }[];
  readonly changed: readonly {
    readonly kind: K;
    readonly record: IndexedRecord;
    readonly data: Data;
    readonly changes: readonly CellChange[];
    readonly row: number;
  }[];
  /** Ids of records that stand as the sheet has them. */
  readonly unchanged: readonly string[];
  readonly faults: readonly SheetFault[];
  /** Names of records that are not there yet, where that was allowed. */
  readonly ahead: readonly SheetFault[];
}

/** A record in SI, where its form is right. */
export function readForm(schemas: Schemas, kind: EntryKind, data: Data): unknown {
  const read = schemas.of(kind).safeParse(withoutBlanks(data));
  return read.success ? read.data : undefined;
}

/** The places at which a record would say something else; a value that means the same stays as it was typed. */
export function differingPaths(schemas: Schemas, kind: EntryKind, old: Data, now: Data, paths: readonly Path[]): readonly Path[] {
  const before = readForm(schemas, kind, old);
  const after = readForm(schemas, kind, now);
  return paths.filter((path) => {
    if (sameTyped(valueAt(old, path), valueAt(now, path))) return false;
    const isOwn = String(path[0]).startsWith('x-');
    return before === undefined || after === undefined || isOwn || !sameValue(valueAt(before, path), valueAt(after, path));
  });
}

/** Where the text must change: at the value itself, or where a whole block comes in place of none. */
export function cellChanges(old: Data, data: Data, changed: readonly Path[]): readonly CellChange[] {
  const paths = new Map<string, Path>();
  for (const whole of changed) {
    let depth = 1;
    while (depth < whole.length && holds(valueAt(old, whole.slice(0, depth)))) depth++;
    const path = whole.slice(0, depth);
    paths.set(JSON.stringify(path), path);
  }
  return [...paths.values()].map((path) => ({ path, old: valueAt(old, path), new: valueAt(data, path) }));
}

const holds = (value: unknown): boolean => Array.isArray(value) || isData(value);
