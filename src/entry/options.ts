import { getOwn } from '../get-own.js';
import type { AnyField } from '../records/field.js';
import type { KindName } from '../records/index.js';
import { kindOf } from '../records/kinds.js';
import { nearest } from '../source/nearest.js';
import { UserError } from '../user-error.js';
import { readCell } from './cells.js';
import { withValue } from './change.js';
import { columnFor, columnsOf, type EntryColumn } from './columns.js';
import type { EntryKind } from './homes.js';
import type { RecordIndex } from './record-index.js';
import type { Data } from './yaml-text.js';

/** Fields given on the command line: `--cut-length "31 ft 10 in"`, `--protection.rating=15A`, `--set fixing.method=screws`. */
export function readFields(kind: KindName, args: readonly string[]): Data {
  let data: unknown = {};
  const given = new Map<string, { readonly typed: string; readonly value: unknown }>();
  for (let i = 0; i < args.length; i++) {
    const arg = args[i] as string;
    const match = /^--([^=]+)(?:=(.*))?$/su.exec(arg);
    if (!match) throw new UserError(`Found \`${arg}\`, expected a field as --${columnsOf(kind)[1]?.key ?? 'id'} and its value`);
    let key = match[1] as string;
    let value = match[2] ?? args[++i];
    if (key === 'set') {
      const at = value?.indexOf('=') ?? -1;
      if (value === undefined || at < 1)
        throw new UserError('Found --set, expected a key and a value, such as --set fixing.method=screws');
      [key, value] = [value.slice(0, at), value.slice(at + 1)];
    }
    if (value === undefined) throw new UserError(`Missing value after --${key}`);
    const column = columnNamed(kind, key);
    const read = readCell(value, column);
    if (!read.ok) throw new UserError(`--${key}: ${read.message}`);
    const name = column.path.join('.');
    const whole = togetherWith(given.get(name), { typed: value, value: read.value }, key);
    given.set(name, { typed: value, value: whole });
    data = withValue(data, column.path, whole);
  }
  return data as Data;
}

/** A list may be given piece by piece, anything else once. */
function togetherWith(
  before: { readonly typed: string; readonly value: unknown } | undefined,
  now: { readonly typed: string; readonly value: unknown },
  key: string,
): unknown {
  if (before === undefined) return now.value;
  if (Array.isArray(before.value) && Array.isArray(now.value)) return [...before.value, ...now.value];
  throw new UserError(`--${key} is given twice, as \`${before.typed}\` and as \`${now.typed}\`: give it once`);
}

/** `cut-length` for `cut_length`: options are written with strokes. */
function columnNamed(kind: KindName, key: string): EntryColumn {
  const column = columnFor(kind, key) ?? columnFor(kind, key.replace(/-/gu, '_'));
  if (column) return column;
  const known = columnsOf(kind).map((one) => one.key);
  const close = nearest(key, known, 2).map((one) => `--${optionOf(one)}`);
  const expected = close.length > 0 ? close.join(' or ') : `one of ${known.map((one) => `--${optionOf(one)}`).join(' ')}`;
  throw new UserError(`A ${kind} has no \`${key}\`, expected ${expected}`);
}

export const optionOf = (key: string): string => key.replace(/_/gu, '-');

/** Keys that must be there and are not, as options. A member’s tube or plate is for the form to tell. */
export function missingFields(kind: KindName, data: Data): readonly EntryColumn[] {
  return columnsOf(kind).filter(({ path, required }) => required && !(String(path[0]) in data));
}

/** A record in the order in which its kind is typed. */
export function inOrder(kind: EntryKind, data: Data): Data {
  const order = new Map(columnsOf(kind).map(({ path }, i) => [String(path[0]), i]));
  const rank = (key: string): number => order.get(key) ?? order.size;
  return Object.fromEntries(Object.entries(data).sort(([a], [b]) => rank(a) - rank(b)));
}

/** The fields of a record that one like it begins with: without what is of that one alone, as its kind says. */
export function lentBy(kind: EntryKind, id: string, known: RecordIndex): Data {
  const record = known.find(kind, id);
  if (!record) throw new UserError(`There is no ${kind} ${id} to take fields from`);
  const { fields } = kindOf(kind);
  return Object.fromEntries(
    Object.entries(record.data).filter(([key]) => getOwn<AnyField>(fields, key)?.traits.notLent !== true),
  );
}
