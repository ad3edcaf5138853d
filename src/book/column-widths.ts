import type { Cell, TableData } from './table-data.js';

/**
 * Widths of a table's columns from what stands in them, so that one long cell does not starve the rest. Browsers share the room by
 * the longest cell; here it is shared by what most cells need.
 */

/** Mean width of a sign, mm: 8.8 pt text and 8.5 pt fixed-width type. */
const SIGN_MM: Readonly<Record<Cell['kind'], number>> = { text: 1.6, id: 1.88, number: 1.78, 'page-no': 1.78 };
const PADDING_MM: Readonly<Record<Cell['kind'], number>> = { text: 2.6, id: 2.4, number: 4.2, 'page-no': 1 };
/** Figures end at the right edge of their column: what follows them keeps off. */
const AFTER_FIGURES_MM = 3.5;
/** Heads are set bolder than cells. */
const HEAD_SIGN_MM = 1.75;
/** A word of wide letters takes more than the mean. */
const WIDE_WORD = 1.1;
/** No word makes a column wider than so many signs: it is broken instead. */
const LONGEST_WORD = 24;
/** The share of cells that should stand on one line where the room allows. */
const MOST_CELLS = 0.85;

/** Percent of the table's width for each column; they add up to 100. */
export function columnWidths(table: Pick<TableData, 'columns' | 'rows' | 'look'>, widthMm: number): readonly number[] {
  const needs = table.columns.map((column, at) => {
    const cells = table.rows.flatMap((row) => row.cells[at] ?? []);
    const sign = SIGN_MM[column.kind];
    const afterFigures = column.kind !== 'number' && table.columns[at - 1]?.kind === 'number';
    const padding = PADDING_MM[column.kind] + (afterFigures ? AFTER_FIGURES_MM : 0);
    const words = cells.map((cell) => Math.max(0, ...sentencesFor(cell).map((word) => word.length)));
    const headWord = Math.max(...`${column.head} ${column.unit ?? ''}`.split(' ').map((word) => word.length));
    const least =
      Math.min(LONGEST_WORD, Math.max(quantile(words, 0.98), headWord)) * sign * (column.kind === 'text' ? WIDE_WORD : 1) +
      padding;
    const lines = cells.map((cell) => lineLength(cell, table.look?.includes('dense') ?? false));
    const signs = column.mayWrap ? 2 * quantile(words, MOST_CELLS) + 2 : quantile(lines, MOST_CELLS);
    const wanted = Math.max(least, signs * sign + padding);
    const head = headWord * HEAD_SIGN_MM + padding;
    return { least, wanted, head: Math.min(head, least) };
  });
  const least = sum(needs.map((need) => need.least));
  const wanted = sum(needs.map((need) => need.wanted));
  const room = widthMm - least;
  const heads = sum(needs.map((need) => need.head));
  const share = (need: { least: number; wanted: number; head: number }): number => {
    // Too many columns: each keeps its head whole, and long words in the cells are broken instead.
    if (room <= 0 && heads < widthMm) return need.head + ((widthMm - heads) * (need.least - need.head)) / (least - heads);
    if (room <= 0) return need.least;
    if (wanted <= widthMm) return (need.wanted * widthMm) / wanted;
    return need.least + (room * (need.wanted - need.least)) / (wanted - least);
  };
  const widths = needs.map(share);
  const whole = sum(widths);
  return widths.map((width) => Math.round((width / whole) * 10000) / 100);
}

/** What cannot be broken: a figure, an id, a word. */
function sentencesFor(cell: Cell): readonly string[] {
  const refs = (cell.refs ?? []).map((one) => `${one.text},`);
  const own = cell.text === undefined ? [] : cell.kind === 'text' ? cell.text.split(' ') : [cell.text];
  return [...refs, ...own, ...(cell.sub?.split(' ') ?? [])];
}

function lineLength(cell: Cell, inOneLine: boolean): number {
  const refs = (cell.refs ?? []).map((one) => one.text).join(', ').length;
  const first = refs + (cell.text?.length ?? 0);
  const second = cell.sub?.length ?? 0;
  return inOneLine ? first + (second > 0 ? second + 2 : 0) : Math.max(first, second);
}

const sum = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);

function quantile(list: readonly number[], share: number): number {
  const sorted = [...list].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0;
}
