import writeXlsxFile, { type Feature, type SheetData } from 'write-excel-file/universal';
import { guardedText } from '../guard.js';
import { columnName } from '../sheet.js';

/** A sheet to be written: every cell a text, as it would stand in CSV. */
export interface SheetOut {
  readonly name: string;
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** By column: what a person is told there, and what may be chosen. */
  readonly hints?: readonly (ColumnHint | undefined)[];
  /** Heads that are set bold: a record needs them. */
  readonly needed?: ReadonlySet<string>;
}

export interface ColumnHint {
  readonly title: string;
  readonly text: string;
  /** Cells of the workbook that hold what may be chosen, as `Lists!$A$2:$A$9`. */
  readonly choices?: string;
  /** Another word is refused; else it is warned of. */
  readonly closed?: boolean;
}

/** Rows of a sheet that pick lists reach to. */
const LAST_ROW = 2000;
const WIDEST = 44;

/** An XLSX workbook (ECMA-376, SpreadsheetML). No cell of it is a formula. */
export async function writeWorkbook(sheets: readonly SheetOut[]): Promise<Uint8Array> {
  const made = sheets.map((sheet) => ({
    data: dataOf(sheet),
    sheet: sheetName(sheet.name),
    stickyRowsCount: 1,
    columns: widthsOf(sheet).map((width) => ({ width })),
  }));
  const blob = await writeXlsxFile(made, { features: [pickLists(sheets)] }).toBlob();
  return new Uint8Array(await blob.arrayBuffer());
}

/** 31 signs at most, and none that a reference takes for its own. */
const sheetName = (name: string): string => name.replace(/[\\/?*[\]:']/gu, '-').slice(0, 31);

function dataOf({ heads, rows, needed }: SheetOut): SheetData {
  const head = heads.map((text) => ({
    value: guardedText(text),
    type: String,
    fontWeight: needed === undefined || needed.has(text) ? ('bold' as const) : undefined,
    backgroundColor: '#e6e9ec',
  }));
  const body = rows.map((row) =>
    row.map((cell) => (cell === '' ? null : { value: guardedText(cell), type: String, wrap: cell.length > WIDEST })),
  );
  return [head, ...body] as SheetData;
}

const widthsOf = ({ heads, rows }: SheetOut): readonly number[] =>
  heads.map((head, i) => {
    const longest = rows.slice(0, 200).reduce((most, row) => Math.max(most, row[i]?.length ?? 0), head.length);
    return Math.min(WIDEST, Math.max(9, longest + 2));
  });

/** What the library has no word for: lists to pick from, and what is said at a cell (ECMA-376 18.3.1.33, dataValidations). */
function pickLists(sheets: readonly SheetOut[]): Feature<Blob> {
  const transform = (xml: string, _options: unknown, { sheetIndex }: { readonly sheetIndex: number }): string => {
    const hints = sheets[sheetIndex]?.hints ?? [];
    const rules = hints.flatMap((hint, i) => (hint ? [validation(hint, columnName(i))] : []));
    if (rules.length === 0) return xml;
    return xml.replace(
      '</sheetData>',
      `</sheetData><dataValidations count="${rules.length}">${rules.join('')}</dataValidations>`,
    );
  };
  return { files: { transform: { 'xl/worksheets/sheet{id}.xml': { transform } } } } as Feature<Blob>;
}

/** Longer ones are refused by spreadsheets. */
const LONGEST_TITLE = 32;
const LONGEST_TEXT = 255;

function validation({ title, text, choices, closed }: ColumnHint, letters: string): string {
  const type = choices === undefined ? '' : ` type="list" errorStyle="${closed ? 'stop' : 'warning'}" showErrorMessage="1"`;
  const said = `showInputMessage="1" promptTitle="${attribute(title, LONGEST_TITLE)}" prompt="${attribute(text, LONGEST_TEXT)}"`;
  const list = choices === undefined ? '' : `<formula1>${attribute(choices, LONGEST_TEXT)}</formula1>`;
  return `<dataValidation${type} allowBlank="1" ${said} sqref="${letters}2:${letters}${LAST_ROW}">${list}</dataValidation>`;
}

const attribute = (text: string, most: number): string =>
  [...text.replace(/\p{Cc}/gu, ' ')]
    .slice(0, most)
    .join('')
    .replace(/[&<>"]/gu, (sign) => `&#${sign.charCodeAt(0)};`);
