import { CsvError, parse } from 'csv-parse/sync';
import { UserError } from '../user-error.js';

/** A table read from CSV or from a sheet of a workbook. */
export interface SheetTable {
  /** As messages name it. */
  readonly name: string;
  /** Empty where it was a workbook, whose numbers are numbers. */
  readonly delimiter: string;
  readonly heads: readonly string[];
  /** Rows with anything in them. */
  readonly rows: readonly SheetRow[];
}

export interface SheetRow {
  /** As a spreadsheet numbers it: the first row of the file is 1. */
  readonly number: number;
  readonly cells: readonly string[];
}

const LARGEST_BYTES = 20 * 1024 * 1024;
/** A spreadsheet has 16,384 columns at most (`XFD`); a sheet of records has a few dozen. */
const MOST_COLUMNS = 1000;
/** A shell has some ten thousand records. */
const MOST_ROWS = 200_000;
const DELIMITERS = [',', ';', '\t', '|'] as const;

/** Cells as texts, before anybody knows which row names the columns. */
export interface CellRows {
  readonly name: string;
  readonly delimiter: string;
  readonly rows: readonly (readonly string[])[];
}

/**
 * Reads CSV (RFC 4180) with whatever delimiter its heads have. `headRow` is the row that holds the heads. Throws {@link UserError}
 * with the row where the file cannot be read.
 */
export const readSheet = (name: string, bytes: Uint8Array, headRow = 1): SheetTable => withHeads(readCsv(name, bytes), headRow);

/** CSV without a word on what its rows are. Throws {@link UserError}. */
export function readCsv(name: string, bytes: Uint8Array): CellRows {
  if (bytes.length > LARGEST_BYTES)
    throw new UserError(`${name} is over ${LARGEST_BYTES / 1048576} MB, expected a sheet of records: split it`);
  const { text, delimiter } = delimited(decode(name, bytes));
  refuseWide(name, text, delimiter);
  return { name, delimiter, rows: parsed(name, text, delimiter) };
}

/** The table below the row that names the columns. Throws {@link UserError} where nothing stands there. */
export function withHeads({ name, delimiter, rows: table }: CellRows, headRow: number): SheetTable {
  const heads = (table[headRow - 1] ?? []).map((head) => head.trim());
  if (heads.every((head) => head === '')) {
    throw new UserError(
      `${name} has no column heads in row ${headRow}, expected names of columns there, as id, section, from. Say which row has them: --header-row 3`,
    );
  }
  const rows = table
    .map((cells, i) => ({ number: i + 1, cells: cells.map((cell) => cell.trim()) }))
    .filter(({ number, cells }) => number > headRow && cells.some((cell) => cell !== '') && !isExample(cells));
  return { name, delimiter, heads, rows };
}

/** The row of a template that shows how a record is typed. */
export const EXAMPLE_MARK = 'example:';
const isExample = (cells: readonly string[]): boolean =>
  cells
    .find((cell) => cell !== '')
    ?.toLowerCase()
    .startsWith(EXAMPLE_MARK) === true;

function decode(name: string, bytes: Uint8Array): string {
  const mark =
    bytes[0] === 0xff && bytes[1] === 0xfe ? 'utf-16le' : bytes[0] === 0xfe && bytes[1] === 0xff ? 'utf-16be' : 'utf-8';
  try {
    // The byte order mark is dropped by the decoder.
    return new TextDecoder(mark, { fatal: true }).decode(bytes);
  } catch {
    throw new UserError(`${name} is not UTF-8 text: save the sheet as CSV UTF-8, or as XLSX`);
  }
}

/** A first line `sep=;`, which some spreadsheets write, says it; else the sign that is most in the first line with heads. */
function delimited(text: string): { readonly text: string; readonly delimiter: string } {
  const said = /^sep=(.)\r?\n/u.exec(text);
  // Spreadsheets neither show nor count that line.
  if (said) return { text: text.slice(said[0].length), delimiter: said[1] as string };
  const first = text.split(/\r?\n|\r/u).find((line) => line.trim() !== '') ?? '';
  const bare = first.replace(/"(?:[^"]|"")*"?/gu, '');
  const count = (sign: string): number => bare.split(sign).length;
  return { text, delimiter: DELIMITERS.reduce((best, sign) => (count(sign) > count(best) ? sign : best)) };
}

/** Before anything is made of it: each cell of a line costs more than its bytes. */
function refuseWide(name: string, text: string, delimiter: string): void {
  let columns = 0;
  let rows = 0;
  for (let at = 0; at < text.length; at++) {
    const sign = text[at];
    if (sign === '\n') {
      columns = 0;
      if (++rows > MOST_ROWS)
        throw new UserError(`${name} has more than ${MOST_ROWS} rows, expected a sheet of records: split it`);
    }
    if (sign === delimiter && ++columns >= MOST_COLUMNS)
      throw new UserError(
        `${name} has more than ${MOST_COLUMNS} columns in one row, expected a sheet of records: take the empty ones out`,
      );
  }
}

function parsed(name: string, text: string, delimiter: string): readonly (readonly string[])[] {
  try {
    // Lines that were pasted from another system end in another way.
    const record_delimiter = ['\r\n', '\n', '\r'];
    return parse(text, { delimiter, record_delimiter, relax_column_count: true, skip_empty_lines: false }) as string[][];
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    throw new UserError(`${name}, line ${String(error.lines ?? '?')}: ${HINTS[error.code] ?? 'this is not CSV'}`);
  }
}

const HINTS: Readonly<Record<string, string>> = {
  CSV_QUOTE_NOT_CLOSED: 'a quotation mark opens here and is never closed: close it, or double it inside a cell (`""`)',
  CSV_INVALID_CLOSING_QUOTE: 'there is a quotation mark inside a quoted cell: double it (`3/4""`)',
  INVALID_OPENING_QUOTE: 'there is a quotation mark inside a cell: put the whole cell in quotes and double the mark (`"3/4"""`)',
};

/** `A`, `B` … `Z`, `AA`: how a spreadsheet names a column, counted from 0. */
export function columnName(index: number): string {
  const rest = Math.floor(index / 26) - 1;
  return (rest >= 0 ? columnName(rest) : '') + String.fromCharCode(65 + (index % 26));
}
