import type { Run } from '../../records/index.js';
import { beginsAnew, type DiagramBlock, rowsInBlock } from './blocks.js';
import type { JoinedAt, Leg, LegBranch } from './tree.js';

/** Something in the grid of a sheet: columns to the right, rows down. */
export type Placed =
  | { readonly kind: 'title'; readonly row: number; readonly block: DiagramBlock; readonly continued: boolean }
  | { readonly kind: 'root'; readonly row: number; readonly leg: Leg; readonly lastRow: number }
  | {
      readonly kind: 'leg';
      readonly row: number;
      readonly column: number;
      readonly leg: Leg;
      /** By which it is reached. */
      readonly run: Run;
      /** It goes on in a block of its own. */
      readonly elsewhere: boolean;
    }
  | { readonly kind: 'back'; readonly row: number; readonly column: number; readonly branch: BackBranch }
  /** A run from a leg to the next; `fromRow` where it branches off lower down than its leg stands. */
  | {
      readonly kind: 'run';
      readonly row: number;
      readonly column: number;
      readonly fromRow: number;
      readonly run: Run;
      /** What it branches off. */
      readonly leg: Leg;
      /** The leg that it leads to, where its id stands over the line. */
      readonly over?: Leg;
      readonly note?: JoinedAt;
    };

export type BackBranch = Extract<LegBranch, { readonly back: string }>;

export interface DiagramPage {
  readonly placed: readonly Placed[];
  readonly rows: number;
}

/** Blocks in rows of as many sheets as they take; a block goes over to the next sheet between two of its branches. */
export function diagramPages(blocks: readonly DiagramBlock[], mostRows: number): readonly DiagramPage[] {
  const pages: { placed: Placed[]; rows: number }[] = [{ placed: [], rows: 0 }];
  const open = (): { placed: Placed[]; rows: number } => pages.at(-1) as { placed: Placed[]; rows: number };
  for (const block of blocks) {
    let left = [...block.strips];
    let continued = false;
    do {
      const page = open();
      const room = mostRows - page.rows - 1;
      let used = 0;
      let count = 0;
      while (count < left.length && used + rowsInBlock(left[count] as LegBranch, 1) <= room) {
        used += rowsInBlock(left[count] as LegBranch, 1);
        count++;
      }
      const nothing = count === 0 && left.length > 0;
      if (nothing && page.rows > 0) {
        pages.push({ placed: [], rows: 0 });
        continue;
      }
      // What is higher than a whole sheet stands on it all the same.
      const strips = left.slice(0, nothing ? 1 : count);
      placeBlock(page, block, strips, continued);
      left = left.slice(strips.length);
      continued = true;
      if (left.length > 0) pages.push({ placed: [], rows: 0 });
    } while (left.length > 0);
  }
  return pages.filter(({ placed }) => placed.length > 0);
}

function placeBlock(
  page: { placed: Placed[]; rows: number },
  block: DiagramBlock,
  strips: readonly LegBranch[],
  continued: boolean,
): void {
  const { placed } = page;
  placed.push({ kind: 'title', row: page.rows, block, continued });
  const first = page.rows + 1;
  let row = first;
  let lastRow = first;
  for (const branch of strips) {
    lastRow = row;
    row = place(placed, block.root, branch, 1, row, first);
  }
  // Where nothing is joined its id says it all.
  if (strips.length > 0) placed.push({ kind: 'root', row: first, leg: block.root, lastRow });
  page.rows = row;
}

/** Places a branch and what hangs on it; gives the first row that is free after it. */
function place(placed: Placed[], before: Leg, branch: LegBranch, column: number, row: number, fromRow: number): number {
  const over = branch.to && branch.to.branches.length > 0 && !beginsAnew(branch.to, column) ? branch.to : undefined;
  placed.push({
    ...{ kind: 'run', row, column, fromRow, run: branch.run, leg: before },
    ...(over ? { over } : {}),
    ...(branch.note ? { note: branch.note } : {}),
  });
  if (!branch.to) {
    placed.push({ kind: 'back', row, column, branch });
    return row + 1;
  }
  const leg = branch.to;
  const elsewhere = beginsAnew(leg, column);
  placed.push({ kind: 'leg', row, column, leg, run: branch.run, elsewhere });
  if (elsewhere || leg.branches.length === 0) return row + 1;
  let next = row;
  for (const one of leg.branches) next = place(placed, leg, one, column + 1, next, row);
  return next;
}
