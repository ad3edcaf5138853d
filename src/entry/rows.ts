import type { Finding } from '../finding.js';
import { parseQuantity } from '../quantity/parse.js';
import { EXAMPLES } from '../quantity/units.js';
import type { FieldSource } from '../records/form/form.js';
import type { Path } from '../source/source.js';
import { type Habits, readCell } from './cells.js';
import { withValue } from './change.js';
import type { EntryColumn } from './columns.js';
import type { SheetHeader } from './headers.js';
import { columnName, type SheetRow, type SheetTable } from './sheet.js';
import { type Data, isData } from './yaml-text.js';

/** Something wrong in a sheet, at its row and column. */
export interface SheetFault {
  readonly row: number;
  /** Counted from 0; undefined where it is about the whole row. */
  readonly column?: number;
  readonly message: string;
}

/** A column that is read. */
export type ReadHead = SheetHeader & { readonly column: EntryColumn };

/** One row as a record, as far as it says. */
export interface SheetRecord {
  readonly row: SheetRow;
  readonly data: Data;
  /** The columns in which this row has something. */
  readonly heads: readonly ReadHead[];
}

export const isRead = (head: SheetHeader): head is ReadHead =>
  head.column !== undefined && (head.how === 'certain' || head.how === 'close');

const SHEET_ERROR = /^#(?:REF!|N\/A|VALUE!|DIV\/0!|NAME\?|NUM!|NULL!|SPILL!|CALC!)$/u;

/** Reads a row; undefined where a cell cannot be read, with every fault told. An empty cell says nothing. */
export function readRow(
  row: SheetRow,
  heads: readonly ReadHead[],
  habits: Habits,
  say: (fault: SheetFault) => void,
): SheetRecord | undefined {
  let data: unknown = {};
  let whole = true;
  const filled = heads.filter((head) => (row.cells[head.index] ?? '') !== '');
  for (const head of filled) {
    const cell = row.cells[head.index] as string;
    if (SHEET_ERROR.test(cell)) {
      whole = false;
      say({
        row: row.number,
        column: head.index,
        message: `\`${cell}\` is an error of the spreadsheet, expected a value: mend the formula`,
      });
      continue;
    }
    const read = readCell(cell, head.column, { ...habits, ...(head.unit ? { unit: head.unit } : {}) });
    const message = read.ok ? bareNumber(read.value, head) : read.message;
    if (message === undefined && read.ok) {
      data = withValue(data, head.column.path, read.value);
      if (head.implied) {
        const { list, index, key, value } = head.implied;
        data = withValue(data, [list, index, key], value);
      }
    } else {
      whole = false;
      say({ row: row.number, column: head.index, message: message ?? '' });
    }
  }
  return whole ? { row, data: data as Data, heads: filled } : undefined;
}

/** A sheet’s numbers carry their unit in the cell or at the head of the column, whatever the file that they go to is read in. */
function bareNumber(value: unknown, { column, text }: ReadHead): string | undefined {
  const { form } = column;
  const places = form.as === 'place' || form.as === 'places' || form.as === 'outlines';
  const dimension = form.as === 'quantity' || form.as === 'range' ? form.dimension : places ? 'length' : undefined;
  if (dimension === undefined) return undefined;
  for (const leaf of leavesOf(value)) {
    const read = parseQuantity(leaf, dimension);
    if (!read.ok && read.reason === 'unit missing') {
      const unit = EXAMPLES[dimension].split(' ').slice(1).join(' ');
      return `Found ${read.found} for \`${column.key}\`, expected ${read.expected}, or the unit at the head of the column, as \`${text} (${unit})\``;
    }
  }
  return undefined;
}

function leavesOf(value: unknown): readonly unknown[] {
  if (Array.isArray(value)) return value.flatMap(leavesOf);
  return isData(value) ? Object.values(value).flatMap(leavesOf) : [value];
}

/** Places in a sheet as the checks of a record ask for them: line for row, column for column. */
export class RowSource implements FieldSource {
  readonly file: string;

  constructor(
    sheet: SheetTable,
    private readonly row: SheetRow,
    private readonly heads: readonly ReadHead[],
  ) {
    this.file = sheet.name;
  }

  place(...path: Path): Finding['place'] {
    const starts = (whole: Path, part: Path): boolean => part.length > 0 && part.every((step, i) => step === whole[i]);
    const head =
      this.heads.find(({ column }) => starts(path, column.path)) ?? this.heads.find(({ column }) => starts(column.path, path));
    const column = (head?.index ?? -1) + 1;
    return { file: this.file, line: this.row.number, column, endLine: this.row.number, endColumn: column + 1 };
  }

  placeOfKey(...path: Path): Finding['place'] {
    return this.place(...path);
  }
}

/** `row 7, column C (Length)`. */
export function placeInSheet({ row, column }: SheetFault, heads: readonly string[]): string {
  if (column === undefined || column < 0) return `row ${row}`;
  return `row ${row}, column ${columnName(column)} (${heads[column] ?? ''})`;
}
