import { nearest } from '../source/nearest.js';
import { UserError } from '../user-error.js';
import { matchHeads } from './headers.js';
import { type CellRows, readCsv, type SheetTable, withHeads } from './sheet.js';
import type { SheetWord } from './sheet-form.js';

/** How a person wants a file read. */
export interface SheetWish {
  readonly word: SheetWord;
  /** The row that names the columns, where it was said. */
  readonly headRow?: number;
  /** The sheet of a workbook, by its name or number. */
  readonly sheet?: string;
}

/** A table, and what to tell of how it was found. */
export interface FoundSheet {
  readonly table: SheetTable;
  readonly told: readonly string[];
}

/** Reads a sheet from CSV or XLSX, whatever its name says, and finds the row with the heads. Throws {@link UserError}. */
export async function readAnySheet(name: string, bytes: Uint8Array, wish: SheetWish): Promise<FoundSheet> {
  const other = otherKind(bytes);
  if (other !== undefined) throw new UserError(`${name} ${other}`);
  const isWorkbook = startsWith(bytes, [0x50, 0x4b]);
  const told: string[] = [];
  if (isWorkbook !== /\.xls[xm]$/iu.test(name))
    told.push(isWorkbook ? 'is a workbook, whatever its name says' : 'is text and no workbook: read as CSV');
  const rows = isWorkbook ? await workbookRows(name, bytes, wish.sheet, told) : readCsv(name, bytes);
  if (!isWorkbook && wish.sheet !== undefined) throw new UserError(`${name} is CSV and has one sheet, expected no --sheet`);
  const headRow = wish.headRow ?? likeliest(rows, wish.word);
  if (wish.headRow === undefined && headRow > 1) told.push(`the names of the columns were found in row ${headRow}`);
  return { table: withHeads(rows, headRow), told };
}

async function workbookRows(name: string, bytes: Uint8Array, wanted: string | undefined, told: string[]): Promise<CellRows> {
  const { readWorkbook } = await import('./workbook/read.js');
  const sheets = await readWorkbook(name, bytes);
  const names = sheets.map((sheet) => sheet.name);
  const [first] = sheets;
  if (!first) throw new UserError(`${name} is a workbook with nothing in it, expected a sheet of records`);
  const number = /^\d+$/u.test(wanted ?? '') ? Number(wanted) - 1 : undefined;
  const found =
    wanted === undefined
      ? first
      : (sheets.find((sheet) => sheet.name.toLowerCase() === wanted.toLowerCase()) ??
        (number === undefined ? undefined : sheets[number]));
  if (!found) {
    const [close] = nearest(wanted as string, names, 1);
    throw new UserError(
      `${name} has no sheet \`${wanted}\`, expected ${close === undefined ? names.join(', ') : `\`${close}\``}`,
    );
  }
  const others = names.filter((one) => one !== found.name && !/^(?:help|lists)$/iu.test(one));
  if (wanted === undefined && others.length > 0)
    told.push(`sheet \`${found.name}\` was read; for ${others.slice(0, 4).join(', ')} say --sheet`);
  return { name, delimiter: '', rows: found.rows };
}

/** Titles and dates may stand above the table. */
const SEARCHED_ROWS = 20;

/** The row with the most names of columns, where the first row has hardly any. */
function likeliest({ rows }: CellRows, word: SheetWord): number {
  const score = (row: readonly string[]): number =>
    matchHeads(
      word,
      row.slice(0, 200).map((cell) => cell.trim()),
      { said: new Map(), own: new Map() },
    ).filter(({ how, text }) => (how === 'certain' || how === 'close') && text.length < 60).length;
  const scores = rows.slice(0, SEARCHED_ROWS).map((row) => (row.some((cell) => cell.trim() !== '') ? score(row) : 0));
  const most = Math.max(0, ...scores);
  return most < 2 || (scores[0] ?? 0) * 2 >= most ? 1 : scores.indexOf(most) + 1;
}

const startsWith = (bytes: Uint8Array, head: readonly number[]): boolean => head.every((byte, i) => bytes[i] === byte);

const KINDS: readonly (readonly [head: readonly number[], is: string])[] = [
  [
    [0xd0, 0xcf, 0x11, 0xe0],
    'is an old workbook (XLS) or one with a password, expected XLSX or CSV: save it as XLSX without a password',
  ],
  [[0x25, 0x50, 0x44, 0x46], 'is a PDF, expected a sheet: get the list as XLSX or CSV from whoever made it'],
  [[0xff, 0xd8, 0xff], 'is a picture, expected a sheet as XLSX or CSV'],
  [[0x89, 0x50, 0x4e, 0x47], 'is a picture, expected a sheet as XLSX or CSV'],
];

/** What the file is, where it can be no sheet at all. */
function otherKind(bytes: Uint8Array): string | undefined {
  if (bytes.length < 3)
    return `holds ${bytes.length === 1 ? 'one byte' : bytes.length === 0 ? 'nothing' : 'two bytes'}, expected a sheet: it was not saved or copied whole`;
  const known = KINDS.find(([head]) => startsWith(bytes, head));
  if (known) return known[1];
  const start = new TextDecoder('latin1').decode(bytes.subarray(0, 400)).trimStart().toLowerCase();
  if (/^(?:<!doctype html|<html|<table|<\?xml)/u.test(start))
    return 'is a web page or XML named like a sheet, expected XLSX or CSV: open it in a spreadsheet and save it as XLSX';
  const isWide = startsWith(bytes, [0xff, 0xfe]) || startsWith(bytes, [0xfe, 0xff]);
  return !isWide && bytes.subarray(0, 4096).includes(0) && !startsWith(bytes, [0x50, 0x4b])
    ? 'is neither text nor a workbook, expected XLSX or CSV'
    : undefined;
}
