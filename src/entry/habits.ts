import { UserError } from '../user-error.js';
import { ambiguousComma, decimalComma, type Habits } from './cells.js';
import type { EntryColumn } from './columns.js';
import type { SheetHeader } from './headers.js';
import type { SheetRow, SheetTable } from './sheet.js';

/** What the person said of the sheet; the rest is taken from the sheet itself, or asked for. */
export interface SaidHabits {
  readonly decimalComma?: boolean;
  readonly dates?: Habits['dates'];
}

/**
 * How a sheet writes decimals and dates, by its own cells where they leave no doubt; `told` says what was taken from them. Throws
 * {@link UserError} with the option to give where a cell can be read in two ways.
 */
export function habitsOf(
  sheet: SheetTable,
  heads: readonly SheetHeader[],
  said: SaidHabits,
): Habits & { readonly told: readonly string[] } {
  const numbers = cellsOf(sheet, heads, isNumeric);
  const dates = cellsOf(sheet, heads, ({ form }) => form.as === 'date');
  const comma = said.decimalComma ?? commaBy(sheet, numbers);
  const order = said.dates ?? orderBy(sheet, dates);
  const told = [
    ...(said.decimalComma === undefined && comma ? ['commas were read as decimal commas'] : []),
    ...(said.dates === undefined && order
      ? [`dates were read as ${order === 'm/d/y' ? 'month/day/year' : 'day/month/year'}`]
      : []),
  ];
  return { decimalComma: comma, ...(order ? { dates: order } : {}), told };
}

interface Cell {
  readonly row: number;
  readonly text: string;
}

const isNumeric = ({ form }: EntryColumn): boolean =>
  ['quantity', 'any quantity', 'level', 'range', 'place', 'places', 'two lengths'].includes(form.as);

function cellsOf({ rows }: SheetTable, heads: readonly SheetHeader[], wanted: (column: EntryColumn) => boolean): readonly Cell[] {
  const indexes = heads.flatMap(({ column, index }) => (column && wanted(column) ? index : []));
  return rows.flatMap(({ number, cells }: SheetRow) => indexes.map((index) => ({ row: number, text: cells[index] ?? '' })));
}

function commaBy(sheet: SheetTable, cells: readonly Cell[]): boolean {
  const sure = cells.find(({ text }) => decimalComma(text));
  const point = cells.find(({ text }) => POINT.test(text));
  if (sure && point)
    throw ambiguous(
      sheet,
      `\`${sure.text}\` in row ${sure.row} has a decimal comma and \`${point.text}\` in row ${point.row} a decimal point`,
    );
  const either = sure && cells.find(({ text }) => ambiguousComma(text));
  if (either) throw ambiguous(sheet, `\`${sure.text}\` in row ${sure.row} has a decimal comma, and ${bothReadings(either)}`);
  if (sure) return true;
  const doubtful = sheet.delimiter === ';' && !point ? cells.find(({ text }) => ambiguousComma(text)) : undefined;
  if (doubtful) throw ambiguous(sheet, bothReadings(doubtful));
  return false;
}

/** A point that can only part decimals, or a comma before three figures and a point: `5.2`, `0.375`, `1,905.5`, `1,234,567`. */
const POINT = /(?:\d\.\d(?!\d\d(?!\d))|(?<!\d)0\.\d|\d,\d{3}[.,]\d)/u;

/** `1,150 lb` may be 1150 lb or 1.150 lb. */
const bothReadings = ({ row, text }: Cell): string =>
  `\`${text}\` in row ${row} may be \`${text.replaceAll(',', '')}\` or \`${text.replace(',', '.')}\``;

const ambiguous = (sheet: SheetTable, what: string): UserError =>
  new UserError(`${sheet.name}: ${what}. Say which: --decimal-comma or --decimal-point`);

function orderBy(sheet: SheetTable, cells: readonly Cell[]): Habits['dates'] {
  const slashed = cells.flatMap(({ row, text }) => {
    const match = /^(\d{1,2})\/(\d{1,2})\/\d{4}$/u.exec(text);
    return match ? [{ row, text, first: Number(match[1]), second: Number(match[2]) }] : [];
  });
  const [one] = slashed;
  if (one === undefined) return undefined;
  const dayFirst = slashed.some(({ first }) => first > 12);
  const monthFirst = slashed.some(({ second }) => second > 12);
  if (dayFirst !== monthFirst) return dayFirst ? 'd/m/y' : 'm/d/y';
  throw new UserError(
    `${sheet.name}: \`${one.text}\` in row ${one.row} may be day or month first. Say which: --dates m/d/y or --dates d/m/y`,
  );
}
