import { type FileUnits, parseNumber } from '../quantity/parse.js';
import type { Dimension } from '../quantity/units.js';
import { readDocument } from '../source/document.js';
import type { EntryColumn } from './columns.js';
import { unguarded } from './guard.js';
import { flow, isData } from './yaml-text.js';

/** How a sheet writes what this format writes otherwise. */
export interface Habits {
  /** Unit of bare numbers, from the column's head. */
  readonly unit?: string;
  /** `5,25` and `1.905,5`. */
  readonly decimalComma?: boolean;
  /** Order of `2/11/2026`. */
  readonly dates?: 'm/d/y' | 'd/m/y';
}

export type CellRead = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly message: string };

const taken = (value: unknown): CellRead => ({ ok: true, value });
const refused = (message: string): CellRead => ({ ok: false, message });

/** Whatever stands in them is text: `[see sheet 3]`. */
const WORDS: readonly EntryColumn['form']['as'][] = ['text', 'id', 'choice', 'yes or no'];

/** What a cell or an option says, as it would stand in a record. Whether that is right is for the schema to say. */
export function readCell(typed: string, column: EntryColumn, habits: Habits = {}): CellRead {
  const text = unguarded(typed.trim());
  if (column.form.as === 'date') return taken(isoDate(text, habits.dates));
  if (/^[[{]/u.test(text) && (column.list || !WORDS.includes(column.form.as))) return readFlow(text, habits);
  const value = column.list ? readList(text, column, habits) : readScalar(text, column, habits);
  return taken(value);
}

/** `[SF-L, CB-04]`, `{method: VT, by: J2}`: as in a record. */
function readFlow(text: string, habits: Habits): CellRead {
  const { data, findings } = readDocument('cell', text);
  const [first] = findings;
  if (first) return refused(first.message);
  return taken(mapLeaves(data, (leaf) => withUnit(String(leaf), habits)));
}

function readList(text: string, { key, form }: EntryColumn, habits: Habits): unknown {
  const between = habits.decimalComma || text.includes(';') ? /\s*;\s*/u : /\s*,\s*/u;
  const number = (one: string): string => numeral(one, habits);
  switch (form.as) {
    case 'place':
      // `20 in x 12 in x 8 in` is one text, as in a record.
      if (/[\d\s'"a-z]x\s*\d/iu.test(text) && !text.includes(';') && !text.includes(',')) return text;
      return text.split(between).map(number);
    case 'range':
      return text.split(between).map(number);
    case 'places':
      return text.split(/\s*;\s*/u).map((place) => place.split(/\s*,\s*/u).map(number));
    case 'texts':
      return text.split(/\s*[;\n]\s*/u).flatMap((one) => (text.includes(';') ? one : one.split(/\s*,\s*/u)));
    case 'ids':
      return idsIn(text);
    default:
      return key === 'joins' ? pairsIn(text) : idsIn(text);
  }
}

/** Ids hold no blanks: whatever else stands between them parts them. */
const idsIn = (text: string): readonly string[] => text.split(/[\s;,+&]+/u).filter((one) => one !== '');

/** `SF-L + CB-04`; several pairs of a weld apart by `;`. */
function pairsIn(text: string): unknown {
  const pairs = text
    .split(';')
    .map(idsIn)
    .filter((pair) => pair.length > 0);
  return pairs.length === 1 ? pairs[0] : pairs.every((pair) => pair.length === 1) ? pairs.flat() : pairs;
}

function readScalar(text: string, { form }: EntryColumn, habits: Habits): unknown {
  if (form.as === 'choice') return choiceOf(form.values, text);
  const numeric = form.as === 'quantity' || form.as === 'any quantity' || form.as === 'level' || form.as === 'count';
  return numeric || form.as === 'two lengths' || form.as === 'other' ? numeral(text, habits) : text;
}

const numeral = (text: string, habits: Habits): string => withUnit(habits.decimalComma ? toPoint(text) : text, habits);

/** `1.905,5 mm` as `1905.5 mm`. */
const toPoint = (text: string): string => text.replace(/(?<=\d)\.(?=\d{3}(?!\d))/gu, '').replace(/(?<=\d),(?=\d)/gu, '.');

function withUnit(text: string, { unit }: Habits): string {
  return unit !== undefined && parseNumber(text) !== undefined ? `${text} ${unit}` : text;
}

/** Day first where points part it, as is the custom; with strokes only where the sheet's order is known. */
function isoDate(text: string, dates: Habits['dates']): string {
  const stamp = text.replace(/^(\d{4}-\d{2}-\d{2}) (\d{1,2}:\d{2})/u, '$1T$2');
  const match = /^(\d{1,2})([./])(\d{1,2})\2(\d{4})$/u.exec(stamp);
  const dayFirst = match?.[2] === '.' || dates === 'd/m/y';
  if (!match || (match[2] === '/' && dates === undefined)) return stamp;
  const [day, month] = dayFirst ? [match[1], match[3]] : [match[3], match[1]];
  return `${match[4]}-${month?.padStart(2, '0')}-${day?.padStart(2, '0')}`;
}

/** The value as a cell shows it, with a unit at every number: `units` are those of the file that it stands in. */
export function writeCell(value: unknown, { form, key }: EntryColumn, units: FileUnits = {}): string {
  if (value === undefined || value === null) return '';
  const symbol = unitOf(form, units);
  const full = symbol === undefined ? value : mapLeaves(value, (leaf) => withUnit(String(leaf), { unit: symbol }));
  if (form.as === 'ids' && Array.isArray(full)) return full.join('; ');
  if (key === 'joins' && Array.isArray(full) && full.every((one) => typeof one !== 'object')) return full.join(' + ');
  return Array.isArray(full) || isData(full) ? flow(full) : String(full);
}

function unitOf(form: EntryColumn['form'], units: FileUnits): string | undefined {
  const lengths: readonly string[] = ['place', 'places', 'outlines', 'two lengths'];
  const dimension: Dimension | undefined =
    form.as === 'quantity' || form.as === 'range' ? form.dimension : lengths.includes(form.as) ? 'length' : undefined;
  return dimension === undefined ? undefined : units[dimension];
}

function mapLeaves(value: unknown, map: (leaf: unknown) => unknown): unknown {
  if (Array.isArray(value)) return value.map((one) => mapLeaves(one, map));
  if (isData(value)) return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, mapLeaves(one, map)]));
  return value === null ? null : map(value);
}

/** A cell whose comma may part thousands or decimals, and nothing says which. */
export const ambiguousComma = (text: string): boolean => /^[+-]?\d{1,3},\d{3}(?!\d)[^,]*$/u.test(text.trim());
/** A comma that can only part decimals. */
export const decimalComma = (text: string): boolean =>
  /^[+-]?(?:\d{1,3}(?:\.\d{3})+|\d+),(?!\d{3}(?!\d))\d+(?:\s*\S{1,8})?$/u.test(text.trim());

/** What inspectors write for the two outcomes of a look or a test. */
const OUTCOMES: readonly (readonly string[])[] = [
  ['accept', 'accepted', 'pass', 'passed', 'ok', 'okay'],
  ['reject', 'rejected', 'fail', 'failed', 'not ok'],
];

/** The word of a closed list, in any case; where the list is the two outcomes alone, also as inspectors write them. Any other text stays. */
function choiceOf(values: readonly string[], text: string): string {
  const word = text.trim().toLowerCase();
  const same = values.find((value) => value.toLowerCase() === word);
  if (same !== undefined) return same;
  const outcomes = values.map((value) => OUTCOMES.findIndex((group) => group.includes(value)));
  const wanted = OUTCOMES.findIndex((group) => group.includes(word));
  const isPair = values.length === 2 && OUTCOMES.every((_, i) => outcomes.includes(i));
  return (isPair && wanted >= 0 ? values[outcomes.indexOf(wanted)] : undefined) ?? text;
}
