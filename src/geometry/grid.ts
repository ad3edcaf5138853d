import type { Bounds } from './box.js';

/** Which of many bounded things may touch some bounds: a grid of equal cells, filled once, asked often. */
export interface Grid {
  /** Indices of the things whose cells the bounds touch, each once, in no stated order. A superset: the caller tests exactly. */
  near(bounds: Bounds): readonly number[];
  /** The same without a list, for what is asked many millions of times; stops where `see` answers true, and says so. */
  visit(bounds: Bounds, see: (index: number) => boolean): boolean;
}

interface GridItem {
  readonly index: number;
  readonly bounds: Bounds;
}

/** More cells than this are never made: a slip of a decimal place must not fill the memory. */
const MOST_CELLS = 1 << 20;
/** A thing that fills more than this share of all cells is looked at every time. */
const MOST_OF_THEM = 1 / 64;

/**
 * Long or slanted things should be given as several bounds with the same `index`. Cell size in the unit of the bounds; cells become
 * larger where there would be too many. What lies far outside the rest falls into the cells at the edge: only slower, never wrong.
 */
export function grid(things: readonly GridItem[], cell: number): Grid {
  const axes = [0, 1, 2].map((k) => extent(things, k as 0 | 1 | 2));
  let size = cell;
  const countAt = (one: number): readonly number[] => axes.map(([low, high]) => Math.max(1, Math.ceil((high - low) / one)));
  while (countAt(size).reduce((product, count) => product * count, 1) > MOST_CELLS) size *= 1.5;
  const [nx, ny, nz] = countAt(size) as [number, number, number];
  const [ox, oy, oz] = axes.map(([low]) => low) as [number, number, number];
  const slot = (value: number, origin: number, count: number): number =>
    value > origin ? Math.min(count - 1, Math.floor((value - origin) / size)) : 0;

  /** Every cell that the bounds touch, until `at` answers true. */
  const eachCell = ({ min, max }: Bounds, at: (key: number) => boolean): boolean => {
    const lastX = slot(max[0], ox, nx);
    const firstY = slot(min[1], oy, ny);
    const lastY = slot(max[1], oy, ny);
    const firstZ = slot(min[2], oz, nz);
    const lastZ = slot(max[2], oz, nz);
    for (let x = slot(min[0], ox, nx); x <= lastX; x++) {
      for (let y = firstY; y <= lastY; y++) {
        const row = (x * ny + y) * nz;
        for (let z = firstZ; z <= lastZ; z++) if (at(row + z)) return true;
      }
    }
    return false;
  };
  const cellsOf = ({ bounds: { min, max } }: GridItem): number =>
    (slot(max[0], ox, nx) - slot(min[0], ox, nx) + 1) *
    (slot(max[1], oy, ny) - slot(min[1], oy, ny) + 1) *
    (slot(max[2], oz, nz) - slot(min[2], oz, nz) + 1);
  const most = Math.max(512, nx * ny * nz * MOST_OF_THEM);
  const everywhere = [...new Set(things.filter((one) => cellsOf(one) > most).map((one) => one.index))];
  const placed = things.filter((one) => cellsOf(one) <= most);
  const { starts, items } = fill(placed, nx * ny * nz, eachCell);
  const seen = new Uint32Array(things.reduce((count, { index }) => Math.max(count, index + 1), 0));
  let turn = 0;

  const visit: Grid['visit'] = (bounds, see) => {
    turn += 1;
    const mine = turn;
    for (let i = 0; i < everywhere.length; i++) {
      const index = everywhere[i] as number;
      seen[index] = mine;
      if (see(index)) return true;
    }
    return eachCell(bounds, (key) => {
      const end = starts[key + 1] as number;
      for (let i = starts[key] as number; i < end; i++) {
        const index = items[i] as number;
        if (seen[index] === mine) continue;
        seen[index] = mine;
        if (see(index)) return true;
      }
      return false;
    });
  };
  return {
    visit,
    near(bounds) {
      const found: number[] = [];
      visit(bounds, (index) => {
        found.push(index);
        return false;
      });
      return found;
    },
  };
}

/** The things of each cell one after another in `items`; those of cell `k` begin at `starts[k]`. */
function fill(
  things: readonly GridItem[],
  cells: number,
  eachCell: (bounds: Bounds, at: (key: number) => boolean) => boolean,
): { readonly starts: Uint32Array; readonly items: Uint32Array } {
  const starts = new Uint32Array(cells + 1);
  const count = (key: number): boolean => {
    starts[key + 1] = (starts[key + 1] as number) + 1;
    return false;
  };
  for (const one of things) eachCell(one.bounds, count);
  for (let key = 0; key < cells; key++) starts[key + 1] = (starts[key + 1] as number) + (starts[key] as number);
  const next = starts.slice();
  const items = new Uint32Array(starts[cells] as number);
  for (const { index, bounds } of things) {
    eachCell(bounds, (key) => {
      items[next[key] as number] = index;
      next[key] = (next[key] as number) + 1;
      return false;
    });
  }
  return { starts, items };
}

/** Of more things than this every second, third … is asked where it lies: the extent steers only how quick the grid is. */
const MOST_ASKED = 1 << 14;

/** Where nearly all things lie along an axis: the one in a hundred at each end, in the wrong unit perhaps, stretches it no further. */
function extent(things: readonly GridItem[], axis: 0 | 1 | 2): readonly [number, number] {
  const step = Math.ceil(things.length / MOST_ASKED);
  const asked = step > 1 ? things.filter((_, i) => i % step === 0) : things;
  const lows = Float64Array.from(asked, ({ bounds }) => bounds.min[axis]).sort();
  const highs = Float64Array.from(asked, ({ bounds }) => bounds.max[axis]).sort();
  const spare = Math.floor(asked.length / 100);
  const low = lows[spare] ?? 0;
  const high = highs[highs.length - 1 - spare] ?? 0;
  return high > low ? [low, high] : [low, low + 1];
}
