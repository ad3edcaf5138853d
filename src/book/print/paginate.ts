/**
 * Lays measured blocks on pages. Pure: heights in, pages out; it knows no browser.
 *
 * A solid block is never cut. A table is cut between rows only, its head repeated on each page, and a row that must stay with the
 * next one is kept with it. A block that keeps with the next (a heading) stands on the page where the next one begins.
 * What is taller than a page is shrunk to fit, and says so; nothing is ever lost.
 */

export type Orientation = 'portrait' | 'landscape';

export interface PageRow {
  readonly heightMm: number;
  /** A heading within the table: stays on the page of the row after it. */
  readonly keepWithNext?: boolean;
}

export interface Block {
  readonly chapter: string;
  /** Of a table: head, rows and foot together. */
  readonly heightMm: number;
  /** Left out at the top of a page. */
  readonly gapBeforeMm: number;
  readonly kind: 'solid' | 'table';
  readonly rows?: readonly PageRow[];
  readonly headMm?: number;
  /** Of a table of narrow lines: it fills its pages in two columns. */
  readonly columns?: 2;
  readonly keepWithNext?: boolean;
  readonly breakBefore?: boolean;
  /** Of a block that begins a page: the side of a bound book where that page must lie, so that two pages face each other. */
  readonly side?: 'left' | 'right';
  readonly sheet: Orientation;
  /** It was wider than its sheet, and is this part of its size. */
  readonly narrowed?: number;
  /** Words of a heading. */
  readonly heading?: string;
  /** Of the head of a card: the id that stands as a tab at the edge of its pages. */
  readonly tab?: string;
}

export interface PagePiece {
  /** Index of the block. */
  readonly block: number;
  /** Rows of a table on this page, the last one excluded; absent: the whole block. */
  readonly rows?: readonly [from: number, to: number];
  /** Of a table in two columns: the first row of the right one. */
  readonly split?: number;
  readonly gapMm: number;
  readonly heightMm: number;
  /** Factor below 1 where it had to be made smaller than measured. */
  readonly shrink?: number;
}

export interface PlannedPage {
  readonly chapter: string;
  readonly sheet: Orientation;
  readonly pieces: readonly PagePiece[];
  readonly usedMm: number;
}

/** Rows that a table shows at least before it is cut. */
const FIRST_ROWS = 2;
/** A table no higher than this share of a page stands whole: a few rows alone on the next page look lost. */
const WHOLE_SHARE = 0.3;
const SLACK = 1e-6;

interface OpenPage {
  chapter: string;
  sheet: Orientation;
  pieces: PagePiece[];
  usedMm: number;
}

export function paginate(blocks: readonly Block[], capacityMm: Readonly<Record<Orientation, number>>): readonly PlannedPage[] {
  const pages: OpenPage[] = [];
  let page: OpenPage | undefined;
  let start = 0;
  while (start < blocks.length) {
    const end = chainEnd(blocks, start);
    const first = blocks[start] as Block;
    const capacity = capacityMm[first.sheet];
    const mustBreak = first.breakBefore || page?.sheet !== first.sheet || page.chapter !== first.chapter;
    if (
      !page ||
      mustBreak ||
      page.usedMm + leastHeight(blocks, start, end, page.pieces.length === 0, capacity) > capacity + SLACK
    ) {
      page = openPage(pages, first);
    }
    for (let index = start; index <= end; index++) {
      const block = blocks[index] as Block;
      const at: Spot = { block, index, chainStart: start, pages, capacity };
      if (block.kind !== 'table' || !block.rows?.length) page = placeSolid(at, page);
      else page = block.columns ? placeColumns(at, block.rows, page) : placeTable(at, block.rows, page);
    }
    start = end + 1;
  }
  return pages;
}

/** What is being placed, and where it may go. */
interface Spot {
  readonly block: Block;
  readonly index: number;
  /** First block of the chain that it ends or belongs to. */
  readonly chainStart: number;
  readonly pages: OpenPage[];
  readonly capacity: number;
}

/** Page 1 lies on the right; where the next page would lie on the wrong side, one for notes comes before it. */
function openPage(pages: OpenPage[], block: Block): OpenPage {
  const side = pages.length % 2 === 0 ? 'right' : 'left';
  if (block.side && block.side !== side) pages.push({ chapter: block.chapter, sheet: block.sheet, pieces: [], usedMm: 0 });
  const page: OpenPage = { chapter: block.chapter, sheet: block.sheet, pieces: [], usedMm: 0 };
  pages.push(page);
  return page;
}

/** Last block of the chain that begins at `start`: each but the last keeps with the next. */
function chainEnd(blocks: readonly Block[], start: number): number {
  let end = start;
  while ((blocks[end] as Block).keepWithNext && end + 1 < blocks.length) {
    const here = blocks[end] as Block;
    const next = blocks[end + 1] as Block;
    if (next.breakBefore || next.sheet !== here.sheet || next.chapter !== here.chapter) break;
    end++;
  }
  return end;
}

/** What the chain takes at least: all its solid blocks, and of a table at its end the head and the first rows. */
function leastHeight(blocks: readonly Block[], start: number, end: number, atTop: boolean, capacity: number): number {
  let sum = 0;
  for (let i = start; i <= end; i++) {
    const block = blocks[i] as Block;
    sum += (i === start && atTop ? 0 : block.gapBeforeMm) + leastOf(block, capacity);
  }
  return sum;
}

function leastOf(block: Block, capacity: number): number {
  const rows = block.rows ?? [];
  const whole = block.columns ? (block.heightMm + (block.headMm ?? 0)) / 2 : block.heightMm;
  if (block.kind === 'solid' || rows.length === 0 || whole <= capacity * WHOLE_SHARE) return whole;
  return (block.headMm ?? 0) + heightOf(rows, 0, groupEnd(rows, Math.min(FIRST_ROWS, rows.length) - 1));
}

/** Index after the last row that must stay with row `at`. */
function groupEnd(rows: readonly PageRow[], at: number): number {
  let end = at;
  while (rows[end]?.keepWithNext && end + 1 < rows.length) end++;
  return end + 1;
}

function heightOf(rows: readonly PageRow[], from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += (rows[i] as PageRow).heightMm;
  return sum;
}

/** True where going to a fresh page would only tear the block from its own headings: rather make it smaller where it stands. */
function stays(at: Spot, page: OpenPage, room: number): boolean {
  return page.pieces.every((piece) => piece.block >= at.chainStart) && room > at.capacity / 2;
}

function placeSolid(at: Spot, page: OpenPage): OpenPage {
  const { block, index, capacity } = at;
  const gapMm = page.pieces.length === 0 ? 0 : block.gapBeforeMm;
  const room = capacity - page.usedMm - gapMm;
  if (block.heightMm <= room + SLACK) {
    put(page, { block: index, gapMm, heightMm: block.heightMm });
    return page;
  }
  if (page.pieces.length > 0 && !stays(at, page, room)) return placeSolid(at, openPage(at.pages, block));
  put(page, { block: index, gapMm, heightMm: room, shrink: room / block.heightMm });
  return page;
}

function placeTable(at: Spot, rows: readonly PageRow[], start: OpenPage): OpenPage {
  const { block, index, capacity } = at;
  const headMm = block.headMm ?? 0;
  let page = start;
  let from = 0;
  while (from < rows.length) {
    const gapMm = page.pieces.length === 0 ? 0 : block.gapBeforeMm;
    const room = capacity - page.usedMm - gapMm;
    let to = rowsThatFit(rows, from, room - headMm);
    let heightMm = headMm + heightOf(rows, from, to);
    let shrink: Pick<PagePiece, 'shrink'> = {};
    if (to === from) {
      if (page.pieces.length > 0 && !stays(at, page, room)) {
        page = openPage(at.pages, block);
        continue;
      }
      // One row is taller than the page: it alone, made smaller.
      to = from + 1;
      const whole = headMm + heightOf(rows, from, to);
      heightMm = Math.min(whole, room);
      if (whole > room) shrink = { shrink: room / whole };
    }
    put(page, { block: index, ...part(from, to, rows.length), gapMm, heightMm, ...shrink });
    from = to;
    if (from < rows.length) page = openPage(at.pages, block);
  }
  return page;
}

/** Down the left column, then down the right one; on its last page both are about as long. */
function placeColumns(at: Spot, rows: readonly PageRow[], start: OpenPage): OpenPage {
  const { block, index, capacity } = at;
  const headMm = block.headMm ?? 0;
  let page = start;
  let from = 0;
  while (from < rows.length) {
    const gapMm = page.pieces.length === 0 ? 0 : block.gapBeforeMm;
    const room = capacity - page.usedMm - gapMm;
    const full = fitting(rows, from, room - headMm);
    if (full === from && page.pieces.length > 0) {
      page = openPage(at.pages, block);
      continue;
    }
    // One line is taller than the page: it alone, made smaller.
    const split = Math.max(full, from + 1);
    const to = Math.max(split, fitting(rows, split, room - headMm));
    const even = to === rows.length ? evenSplit(rows, from, to) : split;
    const whole = headMm + Math.max(heightOf(rows, from, even), heightOf(rows, even, to));
    const heightMm = Math.min(whole, room);
    put(page, {
      block: index,
      rows: [from, to],
      split: even,
      gapMm,
      heightMm,
      ...(whole > room + SLACK ? { shrink: room / whole } : {}),
    });
    from = to;
    if (from < rows.length) page = openPage(at.pages, block);
  }
  return page;
}

/** Index after the last row that fits. */
function fitting(rows: readonly PageRow[], from: number, room: number): number {
  let to = from;
  for (let used = 0; to < rows.length; to++) {
    used += (rows[to] as PageRow).heightMm;
    if (used > room + SLACK) break;
  }
  return to;
}

/** Where the left column is no shorter than the right one, and no longer than it must be for that. */
function evenSplit(rows: readonly PageRow[], from: number, to: number): number {
  const half = heightOf(rows, from, to) / 2;
  let left = 0;
  let at = from;
  while (at < to && left < half - SLACK) left += (rows[at++] as PageRow).heightMm;
  return at;
}

/** Index after the last row that fits, never between a row and the one that it must stay with. */
function rowsThatFit(rows: readonly PageRow[], from: number, room: number): number {
  let to = from;
  let used = 0;
  while (to < rows.length) {
    const next = groupEnd(rows, to);
    used += heightOf(rows, to, next);
    if (used > room + SLACK) break;
    to = next;
  }
  return spareOne(rows, from, to);
}

/** A last row alone on a page looks lost: one more goes over with it, where enough stay behind. */
function spareOne(rows: readonly PageRow[], from: number, to: number): number {
  const alone = rows.length - to === 1 && to - from > FIRST_ROWS;
  return alone && !rows[to - 2]?.keepWithNext ? to - 1 : to;
}

const part = (from: number, to: number, count: number): Pick<PagePiece, 'rows'> =>
  from === 0 && to === count ? {} : { rows: [from, to] };

function put(page: OpenPage, piece: PagePiece): void {
  page.pieces.push(piece);
  page.usedMm += piece.gapMm + piece.heightMm;
}
