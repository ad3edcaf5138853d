import type { Bounds } from './box.js';

/** Which of many bounded things may touch some bounds: a grid of equal cells, filled once, asked often. */
export interface Grid {
  /** Indices of the things whose cells the bounds touch, each once, in no stated order. A superset: the caller tests exactly. */
  near(bounds: Bounds): readonly number[];
}

/** Long or slanted things should be given as several bounds with the same `index`. Cell size in the unit of the bounds. */
export function grid(things: readonly { readonly index: number; readonly bounds: Bounds }[], cell: number): Grid {
  const cells = new Map<number, number[]>();
  const everywhere: number[] = [];
  let count = 0;
  for (const { index, bounds } of things) {
    count = Math.max(count, index + 1);
    if (cellsOf(bounds, cell) > MOST_CELLS) {
      everywhere.push(index);
      continue;
    }
    eachCell(bounds, cell, (key) => {
      const list = cells.get(key);
      if (!list) cells.set(key, [index]);
      else if (list[list.length - 1] !== index) list.push(index);
    });
  }
  const seen = new Uint32Array(count);
  let turn = 0;
  return {
    near(bounds) {
      turn += 1;
      const found: number[] = [];
      const add = (index: number): void => {
        if (seen[index] === turn) return;
        seen[index] = turn;
        found.push(index);
      };
      everywhere.forEach(add);
      if (cellsOf(bounds, cell) > MOST_CELLS) for (const list of cells.values()) list.forEach(add);
      else eachCell(bounds, cell, (key) => cells.get(key)?.forEach(add));
      return found;
    },
  };
}

/** A thing larger than this is looked at every time: a slip of a decimal place must not fill the memory. */
const MOST_CELLS = 50_000;

const cellsOf = (bounds: Bounds, cell: number): number =>
  bounds.min.reduce((product, low, k) => product * ((bounds.max[k] as number) - low + cell), 1) / cell ** 3;

/** Cells beyond this many each way from the datum share their neighbours' numbers: only slower, never wrong. */
const SPAN = 4096;

function eachCell(bounds: Bounds, cell: number, visit: (key: number) => void): void {
  const first = bounds.min.map((value) => index(value, cell));
  const last = bounds.max.map((value) => index(value, cell));
  for (let x = first[0] as number; x <= (last[0] as number); x++) {
    for (let y = first[1] as number; y <= (last[1] as number); y++) {
      for (let z = first[2] as number; z <= (last[2] as number); z++) visit((x * SPAN + y) * SPAN + z);
    }
  }
}

const index = (value: number, cell: number): number => Math.min(SPAN - 1, Math.max(0, Math.floor(value / cell) + SPAN / 2));
