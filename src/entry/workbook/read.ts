import { zipSync } from 'fflate';
import readXlsxFile from 'read-excel-file/universal';
import { UserError } from '../../user-error.js';
import { unpackWorkbook } from './unpack.js';

/** A sheet of a workbook as texts, as they would stand in CSV. */
export interface WorkbookSheet {
  readonly name: string;
  readonly rows: readonly (readonly string[])[];
}

const MOST_COLUMNS = 1000;
const MOST_ROWS = 200_000;
/** Rows times columns: the reader makes all of them. */
const MOST_CELLS = 5_000_000;

/**
 * Every sheet of an XLSX workbook that has cells (ECMA-376, SpreadsheetML). Formulas are not worked out: the result that the spreadsheet
 * kept is read, and one without a result is refused. Throws {@link UserError}.
 */
export async function readWorkbook(name: string, bytes: Uint8Array): Promise<readonly WorkbookSheet[]> {
  const parts = await unpackWorkbook(name, bytes);
  for (const [part, content] of parts) if (part.startsWith('xl/worksheets/')) refuse(name, new TextDecoder().decode(content));
  // Packed anew, the reader sees those parts and nothing else.
  const clean = zipSync(Object.fromEntries(parts), { level: 0 });
  const sheets = await readXlsxFile(new Blob([clean as Uint8Array<ArrayBuffer>]), {
    parseNumber: (text: string) => new CellNumber(text),
    trim: false,
  }).catch(() => {
    throw new UserError(
      `${name} cannot be read as a workbook: open it in a spreadsheet and save it again as XLSX, or save the sheet as CSV`,
    );
  });
  return sheets
    .map(({ sheet, data }) => ({ name: sheet, rows: data.map((row) => row.map(textOf)) }))
    .filter(({ rows }) => rows.some((row) => row.some((cell) => cell !== '')));
}

/** Before anything is made of it: one cell in the last row and column makes a table of millions. */
function refuse(name: string, xml: string): void {
  let [rows, columns] = [0, 0];
  for (const [, letters = '', number = ''] of xml.matchAll(/<(?:\w+:)?c\b[^>]*?\sr="([A-Z]{1,7})(\d{1,9})"/gu)) {
    rows = Math.max(rows, Number(number));
    columns = Math.max(
      columns,
      [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0),
    );
  }
  for (const [, number = ''] of xml.matchAll(/<(?:\w+:)?row\b[^>]*?\sr="(\d{1,9})"/gu)) rows = Math.max(rows, Number(number));
  rows = Math.max(rows, xml.split(/<(?:\w+:)?row[\s>/]/u).length - 1);
  if (rows > MOST_ROWS || columns > MOST_COLUMNS || rows * columns > MOST_CELLS)
    throw new UserError(
      `${name} has a sheet of ${rows} rows and ${columns} columns, expected a sheet of records: take the empty ones out, or save the sheet as CSV`,
    );
  const bare =
    /<(?:\w+:)?c\b[^>]*?\sr="([A-Z]+\d+)"[^>]*>\s*<(?:\w+:)?f\b(?:[^>]*\/>|[^>]*>[^<]*<\/(?:\w+:)?f>)\s*(?:<(?:\w+:)?v\s*\/>|<(?:\w+:)?v>\s*<\/(?:\w+:)?v>)?\s*<\/(?:\w+:)?c>/u.exec(
      xml,
    );
  if (bare)
    throw new UserError(
      `${name} has a formula without its result in cell ${bare[1]}, expected values: open it in a spreadsheet and save it, or paste only the values`,
    );
}

/** A number as the file has it: a text that looks like one stays a text. */
class CellNumber {
  constructor(readonly text: string) {}
}

function textOf(cell: unknown): string {
  if (cell === null || cell === undefined) return '';
  if (cell instanceof CellNumber) return numberText(cell.text);
  if (cell instanceof Date) return dateText(cell);
  return typeof cell === 'boolean' ? (cell ? 'yes' : 'no') : String(cell).trim();
}

/** What a spreadsheet keeps of 0.3 may be 0.30000000000000004. */
function numberText(text: string): string {
  const value = Number(text);
  if (!Number.isFinite(value)) return text;
  const short = String(Number(value.toPrecision(15)));
  return /e/iu.test(short) ? value.toFixed(12).replace(/\.?0+$/u, '') : short;
}

/** Days without a time are midnight. */
function dateText(date: Date): string {
  const iso = new Date(Math.round(date.getTime() / 1000) * 1000).toISOString().slice(0, 19);
  return iso.endsWith('T00:00:00') ? iso.slice(0, 10) : iso.replace(/:00$/u, '');
}
