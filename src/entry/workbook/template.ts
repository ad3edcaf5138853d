import { EXAMPLES } from '../../quantity/units.js';
import type { KindName } from '../../records/index.js';
import { kindOf } from '../../records/kinds.js';
import { writeCell } from '../cells.js';
import { valueAt } from '../change.js';
import type { EntryColumn } from '../columns.js';
import { ENTRY_KINDS, type EntryKind } from '../homes.js';
import type { ListWord } from '../lists/columns.js';
import type { RecordIndex } from '../record-index.js';
import { columnName, EXAMPLE_MARK } from '../sheet.js';
import { formOfSheet, isList, type SheetForm, type SheetWord } from '../sheet-form.js';
import type { LeadWord } from '../trade-words.js';
import type { Data } from '../yaml-text.js';
import type { ColumnHint, SheetOut } from './write.js';

type Units = 'us' | 'metric' | 'both';

const US: Readonly<Record<string, string>> = {
  length: 'in',
  mass: 'lb',
  pressure: 'psi',
  torque: 'ft.lb',
  volume: 'gal',
  force: 'lbf',
};
const METRIC: Readonly<Record<string, string>> = {
  length: 'mm',
  mass: 'kg',
  pressure: 'kPa',
  torque: 'N.m',
  volume: 'L',
  force: 'kN',
};

/** Fields that a shop hardly ever fills in a sheet: they stand last, and are not lost. */
const RARE: ReadonlySet<string> = new Set(['place', 'planned', 'corrected.date', 'corrected.by', 'corrected.why', 'photos']);

export interface TemplateOf {
  readonly word: SheetWord;
  /** The library, and the shell whose ids are offered. */
  readonly known: RecordIndex;
  /** The starter files with their examples: the row that shows how it is done. */
  readonly examples: RecordIndex;
  readonly units: Units;
}

/** A workbook to fill in: units in the heads, lists to pick from, an example row that import leaves out, and a page of help. */
export function templateSheets({ word, known, examples, units }: TemplateOf): readonly SheetOut[] {
  const columns = columnsFor(word);
  const heads = columns.map((column) => headOf(column, units));
  const lists = new Lists();
  const hints = columns.map((column): ColumnHint => {
    const choices = lists.of(column, known);
    const text = `${column.help}${column.required ? ' (needed)' : ''}${formatOf(column)}`;
    return { title: column.key, text, ...(choices === undefined ? {} : { choices, closed: column.form.as === 'choice' }) };
  });
  const needed = new Set(columns.flatMap((column, i) => (column.required ? [heads[i] as string] : [])));
  const example = exampleRow(word, columns, examples);
  const help = columns.map((column, i) => [
    heads[i] as string,
    column.help,
    column.required ? 'yes' : '',
    column.form.as === 'choice' ? column.form.values.join(', ') : formatOf(column).replace(/^\. /u, ''),
  ]);
  const name = isList(word) ? `${word}s` : word;
  return [
    { name, heads, rows: example === undefined ? [] : [example], hints, needed },
    { name: 'Help', heads: ['column', 'what it is', 'needed', 'how it is written'], rows: [...help, ...NOTES] },
    ...lists.sheet(),
  ];
}

const NOTES: readonly (readonly string[])[] = [
  ['', '', '', ''],
  ['', 'A row whose first cell begins with “example:” is left out.', '', ''],
  [
    '',
    'An empty cell changes nothing; neither does the same sheet a second time. Columns may be left out, moved or renamed.',
    '',
    '',
  ],
  [
    '',
    'A unit in a cell (5-1/4 in, 133 mm) overrides that of the head. Places may be given as a tape measures them: 24 in aft of P-L-06.',
    '',
    '',
  ],
];

/** Required ones first, then as they are asked for, then the rest; a place as its three lengths. */
function columnsFor(word: SheetWord): readonly EntryColumn[] {
  const form = formOfSheet(word);
  const all = form.columns.filter(
    ({ path, key, form: { as } }) => path.every((step) => typeof step === 'string') && !RARE.has(key) && as !== 'outlines',
  );
  const asked: readonly string[] = isList(word) ? [] : ((kindOf(word).more.asked ?? []) as readonly string[]);
  const rank = ({ key, required }: EntryColumn): number =>
    key === 'id' ? -2 : required ? -1 : asked.includes(key) ? asked.indexOf(key) : 999;
  const sorted = isList(word) ? all : [...all].sort((a, b) => rank(a) - rank(b));
  return sorted.flatMap((column) => {
    const lead = [...form.leads.values()].find(({ list }) => list === column.key);
    if (lead) return ledColumns(form, lead);
    if (column.form.as !== 'place' || /^size/iu.test(column.key)) return [column];
    const axis = (one: string): string => (isList(word) ? `${column.key.replace(/_at$/u, '')}_${one}` : `${column.key}.${one}`);
    const parts = ['x', 'y', 'z'].flatMap((one) => form.columnFor(axis(one)) ?? []);
    return parts.map((part) => ({ ...part, required: column.required, help: column.help }));
  });
}

/** `VT by`, `VT date`, `VT result` for a list of inspections. */
function ledColumns({ words, columnFor }: SheetForm, { list, key, word }: LeadWord): readonly EntryColumn[] {
  const inner = new Set([...words.values()].filter((one) => one.startsWith(`${list}.1.`) && one !== `${list}.1.${key}`));
  return [...inner].flatMap((one) => {
    const column = columnFor(one);
    return column ? [{ ...column, key: `${word} ${one.slice(`${list}.1.`.length)}`, required: false }] : [];
  });
}

function headOf({ key, form }: EntryColumn, units: Units): string {
  if (form.as !== 'quantity') return key;
  const own = (units === 'metric' ? METRIC : US)[form.dimension] ?? EXAMPLES[form.dimension].split(' ').slice(1).join(' ');
  return own === '' ? key : `${key} (${own})`;
}

function formatOf({ form }: EntryColumn): string {
  switch (form.as) {
    case 'date':
      return '. As 2026-02-11';
    case 'quantity':
      return `. As ${EXAMPLES[form.dimension]}`;
    case 'ids':
      return '. Ids with ; between';
    case 'places':
      return '. Corners with ; between, each x, y, z';
    case 'yes or no':
      return '. yes or no';
    default:
      return '';
  }
}

const LISTED: Readonly<Record<ListWord, Data>> = {
  wire: { mark: '12', from: 'DC panel', to: 'Bay light left', awg: '14', colour: 'red', fuse: '15', length: '21-1/2' },
  pipe: { mark: 'CW', from: 'Pump', to: 'Galley tap', size: '1/2 in PEX', colour: 'blue', length: '96', pressure: '50' },
};

/** The starter’s own example, as it stands in a sheet. */
function exampleRow(word: SheetWord, columns: readonly EntryColumn[], examples: RecordIndex): readonly string[] | undefined {
  const data: Data | undefined = isList(word) ? LISTED[word] : examples.ofKind(word)[0]?.data;
  if (data === undefined) return undefined;
  const cells = columns.map((column) => (isList(word) ? String(data[column.key] ?? '') : cellOf(data, column)));
  return [`${EXAMPLE_MARK} ${cells[0] ?? ''}`.trim(), ...cells.slice(1)];
}

function cellOf(data: Data, column: EntryColumn): string {
  const value = valueAt(data, column.path);
  return value === undefined ? '' : writeCell(value, column);
}

/** Where what may be picked stands: a column of the sheet `Lists` for each. */
class Lists {
  private readonly columns = new Map<string, readonly string[]>();

  of({ key, form, traits }: EntryColumn, known: RecordIndex): string | undefined {
    if (form.as === 'choice') return this.put(key, form.values);
    if (form.as === 'yes or no') return this.put('yes or no', ['yes', 'no']);
    const names = form.as === 'id' ? traits.names : undefined;
    if (names === undefined || names === 'any') return undefined;
    const kinds = names.filter((name): name is EntryKind => (ENTRY_KINDS as readonly KindName[]).includes(name));
    const ids = kinds.flatMap((kind) => known.ofKind(kind).flatMap(({ id }) => id ?? []));
    return ids.length === 0 || ids.length > 5000 ? undefined : this.put(names.join(' or '), ids);
  }

  private put(name: string, values: readonly string[]): string {
    this.columns.set(name, values);
    const letters = columnName([...this.columns.keys()].indexOf(name));
    return `Lists!$${letters}$2:$${letters}$${values.length + 1}`;
  }

  sheet(): readonly SheetOut[] {
    if (this.columns.size === 0) return [];
    const all = [...this.columns.values()];
    const rows = Array.from({ length: Math.max(...all.map(({ length }) => length)) }, (_, i) =>
      all.map((values) => values[i] ?? ''),
    );
    return [{ name: 'Lists', heads: [...this.columns.keys()], rows }];
  }
}
