import { stringify } from 'csv-stringify/sync';
import type { Path } from '../source/source.js';
import { writeCell } from './cells.js';
import { valueAt } from './change.js';
import { columnFor, columnsOf, type EntryColumn } from './columns.js';
import { guarded } from './guard.js';
import { type EntryKind, homeOf } from './homes.js';
import type { IndexedRecord, RecordIndex } from './record-index.js';
import { isData } from './yaml-text.js';

/** Records of one kind as rows of text, as typed; every number with its unit. */
export interface Table {
  readonly kind: EntryKind;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** Columns that a table has even where nothing stands in them. */
const ALWAYS = ['id', 'stage'];

/** Every record of a kind in file order. Blocks are taken apart into columns of their own, as `inspections.1.by`. */
export function tableOf(kind: EntryKind, known: RecordIndex): Table {
  const records = known.ofKind(kind);
  const columns = columnsIn(kind, records);
  const rows = records.map((record) =>
    columns.map((column) => {
      const value = valueAt(record.data, column.path);
      return opens(value) ? '' : writeCell(value, column, known.unitsOf(record.file));
    }),
  );
  return { kind, heads: columns.map(({ key }) => key), rows };
}

/** RFC 4180, lines ended by CR LF, with no cell that a spreadsheet would run. */
export function csvOf(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  return stringify([heads.map(guarded), ...rows.map((row) => row.map(guarded))], { record_delimiter: 'windows' });
}

/** The file that a kind’s table goes to: `members.csv`. */
export const tableName = (kind: EntryKind): string => {
  const home = homeOf(kind);
  return 'list' in home ? home.list : (home.path.at(-1) as string);
};

function columnsIn(kind: EntryKind, records: readonly IndexedRecord[]): readonly EntryColumn[] {
  const known = columnsOf(kind);
  const found = new Map<string, EntryColumn>();
  for (const column of known)
    if (ALWAYS.includes(column.key) || (records.length === 0 && column.required)) found.set(column.key, column);
  for (const { data } of records) {
    for (const path of leavesOf(data)) {
      const key = path.map((step) => (typeof step === 'number' ? step + 1 : step)).join('.');
      const column = found.has(key) ? undefined : columnFor(kind, key);
      if (column) found.set(key, column);
    }
  }
  const order = new Map(known.map(({ path }, i) => [String(path[0]), i]));
  const seen = new Map([...found.keys()].map((key, i) => [key, i]));
  const rank = ({ path, key }: EntryColumn): readonly number[] => [
    order.get(String(path[0])) ?? order.size,
    ...path.slice(1).map((step) => (typeof step === 'number' ? step : (blocks.get(step) ?? 0))),
    seen.get(key) ?? 0,
  ];
  const blocks = blockOrder([...found.values()]);
  return [...found.values()].sort((a, b) => compare(rank(a), rank(b)));
}

/** Keys within blocks, in the order in which they first stand in a record. */
function blockOrder(columns: readonly EntryColumn[]): ReadonlyMap<string | number, number> {
  return new Map(
    [...new Set(columns.flatMap(({ path }) => path.slice(1).filter((step) => typeof step === 'string')))].map((step, i) => [
      step,
      i,
    ]),
  );
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < Math.max(a.length, b.length); i++) {
    const difference = (a[i] ?? -1) - (b[i] ?? -1);
    if (difference !== 0) return difference;
  }
  return 0;
}

/** Paths of what stands in one cell each. */
function leavesOf(value: unknown, path: Path = []): readonly Path[] {
  if (!opens(value)) return value === null || value === undefined ? [] : [path];
  const entries: readonly (readonly [string | number, unknown])[] = Array.isArray(value)
    ? [...value.entries()]
    : Object.entries(value as object);
  return entries.flatMap(([step, one]) => leavesOf(one, [...path, step]));
}

/** A block, or a list of blocks: its parts have columns of their own. */
const opens = (value: unknown): boolean => isData(value) || (Array.isArray(value) && value.length > 0 && value.every(isData));
