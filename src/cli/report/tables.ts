import { WIDTH, widthOf, wrapLines } from './wrap.js';

export interface TextColumn {
  readonly head: string;
  readonly align?: 'left' | 'right';
  /** The column that gives way, by wrapping, where the table is too wide. */
  readonly wrap?: boolean;
}

const GAP = 2;
const LEAST = 12;

/** An aligned table of plain text: heads, then rows. Trailing blanks are cut. */
export function textTable(columns: readonly TextColumn[], rows: readonly (readonly string[])[], indent = ''): string {
  const widths = columnWidths(columns, rows, indent.length);
  const heads = line(
    columns,
    widths,
    columns.map((column) => column.head),
    indent,
  );
  return [heads, ...rows.flatMap((row) => tall(columns, widths, row, indent))].join('\n');
}

function columnWidths(columns: readonly TextColumn[], rows: readonly (readonly string[])[], indent: number): readonly number[] {
  const natural = columns.map((column, i) => Math.max(widthOf(column.head), ...rows.map((row) => widthOf(row[i] ?? ''))));
  const total = indent + natural.reduce((sum, width) => sum + width + GAP, -GAP);
  const giving = columns.findIndex((column) => column.wrap);
  if (total <= WIDTH || giving < 0) return natural;
  return natural.map((width, i) => (i === giving ? Math.max(LEAST, width - (total - WIDTH)) : width));
}

/** A row whose wrapped cell may take several lines. */
function tall(
  columns: readonly TextColumn[],
  widths: readonly number[],
  row: readonly string[],
  indent: string,
): readonly string[] {
  const cells = columns.map((column, i) => (column.wrap ? wrapLines(row[i] ?? '', widths[i] as number) : [row[i] ?? '']));
  const height = Math.max(...cells.map((cell) => cell.length));
  return Array.from({ length: height }, (_, at) =>
    line(
      columns,
      widths,
      cells.map((cell) => cell[at] ?? ''),
      indent,
    ),
  );
}

function line(columns: readonly TextColumn[], widths: readonly number[], cells: readonly string[], indent: string): string {
  const parts = columns.map((column, i) => {
    const cell = cells[i] as string;
    const blank = ' '.repeat(Math.max(0, (widths[i] as number) - widthOf(cell)));
    return column.align === 'right' ? blank + cell : cell + blank;
  });
  return (indent + parts.join(' '.repeat(GAP))).trimEnd();
}
