import { type Leg, type LegBranch, rowsOf } from './tree.js';

/** A tree cut into pieces that are as wide as the sheet: each begins at the left with the leg that it hangs on. */
export interface DiagramBlock {
  readonly root: Leg;
  /** The id of the last leg before it, in another block; absent for a source. */
  readonly from?: string;
  /** Sub-trees, one below the other. */
  readonly strips: readonly LegBranch[];
}

/** A leg with so many branches is a bar of its own. */
const BAR = 4;
/** Legs beside one another at most, the root not counted. */
export const MOST_COLUMNS = 4;
/** Rows of one sub-tree at most: what is higher begins anew. */
const MOST_ROWS = 14;

/** Whether a leg begins a block of its own where it stands in the so-manyth column of another. */
export const beginsAnew = (leg: Leg, column: number): boolean =>
  leg.branches.length >= BAR ||
  (leg.branches.length > 0 && column >= MOST_COLUMNS) ||
  (leg.branches.length > 1 && rowsOf(leg) > MOST_ROWS);

/** The blocks of a diagram, each after the one that it hangs on. */
export function blocksOf(roots: readonly Leg[]): readonly DiagramBlock[] {
  const blocks: DiagramBlock[] = [];
  const add = (root: Leg, from?: string): void => {
    blocks.push({ root, strips: root.branches, ...(from === undefined ? {} : { from }) });
    const later: { readonly leg: Leg; readonly from: string }[] = [];
    const look = (branch: LegBranch, column: number, before: string): void => {
      const leg = branch.to;
      if (!leg) return;
      if (beginsAnew(leg, column)) later.push({ leg, from: before });
      else for (const next of leg.branches) look(next, column + 1, lastId(leg));
    };
    for (const branch of root.branches) look(branch, 1, lastId(root));
    for (const { leg, from: before } of later) add(leg, before);
  };
  for (const root of roots) add(root);
  return blocks;
}

export const lastId = ({ nodes }: Leg): string => nodes.at(-1)?.id ?? '';

/** Rows that a branch takes in its block: what begins anew elsewhere takes one. */
export const rowsInBlock = (branch: LegBranch, column: number): number => {
  const leg = branch.to;
  if (!leg || leg.branches.length === 0 || beginsAnew(leg, column)) return 1;
  return leg.branches.reduce((sum, next) => sum + rowsInBlock(next, column + 1), 0);
};
