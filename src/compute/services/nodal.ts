/** A conductor between two nodes, there and back, ohm. */
export interface Resistor {
  readonly from: string;
  readonly to: string;
  readonly ohm: number;
}

/** What is drawn at a node: amperes, or watts at whatever voltage is left there. */
export interface Draw {
  readonly node: string;
  readonly a?: number;
  readonly w?: number;
}

export interface Solved {
  /** Volts lost from the root to each node that it feeds. */
  readonly dropV: ReadonlyMap<string, number>;
  /** Amperes drawn at each node in the end. */
  readonly drawnA: ReadonlyMap<string, number>;
}

/** A lug or a busbar has some resistance too; it keeps the equations apart. */
const LEAST_OHM = 1e-7;
/** Rounds for loads in watts; they settle in a handful. */
const MOST_ROUNDS = 50;
/** A load in watts whose line cannot carry it never settles: its voltage is held at half the source's. */
const LEAST_SHARE = 0.5;

/**
 * Nodal analysis: with the root held, the currents into every other node sum to what is drawn there, Σ (d_i − d_j) / R = I, d the drop
 * below the root. Rings are solved as rings. `volts` of the root is asked for where a load is in watts. Nodes that nothing joins to the
 * root are left out.
 */
export function solveNodal(resistors: readonly Resistor[], root: string, draws: readonly Draw[], volts?: number): Solved {
  const fed = joinedTo(root, resistors);
  const nodes = [...fed].filter((id) => id !== root);
  const index = new Map(nodes.map((id, i) => [id, i] as const));
  const live = resistors.filter(({ from, to }) => fed.has(from) && fed.has(to) && from !== to);
  const drops = (a: ReadonlyMap<string, number>): ReadonlyMap<string, number> => {
    const rows = nodes.map((id) => [...nodes.map(() => 0), a.get(id) ?? 0]);
    for (const { from, to, ohm } of live) {
      const siemens = 1 / Math.max(LEAST_OHM, ohm);
      const [i, j] = [index.get(from), index.get(to)];
      const add = (row: number | undefined, column: number | undefined, value: number): void => {
        const at = row === undefined || column === undefined ? undefined : rows[row];
        if (at && column !== undefined) at[column] = (at[column] as number) + value;
      };
      add(i, i, siemens);
      add(j, j, siemens);
      add(i, j, -siemens);
      add(j, i, -siemens);
    }
    const solved = eliminate(rows);
    return new Map([[root, 0] as const, ...nodes.map((id, i) => [id, solved[i] as number] as const)]);
  };
  let drawnA = amperes(draws, fed, volts, undefined);
  let dropV = drops(drawnA);
  for (let round = 0; round < MOST_ROUNDS && draws.some(({ w }) => w !== undefined); round++) {
    const next = amperes(draws, fed, volts, dropV);
    const moved = [...next].some(([id, a]) => Math.abs(a - (drawnA.get(id) ?? 0)) > 1e-9 * Math.max(1, a));
    drawnA = next;
    dropV = drops(drawnA);
    if (!moved) break;
  }
  return { dropV, drawnA };
}

function amperes(
  draws: readonly Draw[],
  fed: ReadonlySet<string>,
  volts: number | undefined,
  dropV: ReadonlyMap<string, number> | undefined,
): ReadonlyMap<string, number> {
  const all = new Map<string, number>();
  for (const { node, a, w } of draws) {
    if (!fed.has(node)) continue;
    const left = volts === undefined ? undefined : Math.max(LEAST_SHARE * volts, volts - (dropV?.get(node) ?? 0));
    const drawn = a ?? (w === undefined || left === undefined ? 0 : w / left);
    all.set(node, (all.get(node) ?? 0) + drawn);
  }
  return all;
}

function joinedTo(root: string, resistors: readonly Resistor[]): ReadonlySet<string> {
  const beside = new Map<string, string[]>();
  for (const { from, to } of resistors) {
    beside.set(from, [...(beside.get(from) ?? []), to]);
    beside.set(to, [...(beside.get(to) ?? []), from]);
  }
  const seen = new Set([root]);
  for (const at of seen) for (const next of beside.get(at) ?? []) seen.add(next);
  return seen;
}

/** Gaussian elimination with the largest pivot, on rows that end with their right side. */
function eliminate(rows: readonly number[][]): readonly number[] {
  const size = rows.length;
  const m = rows.map((row) => [...row]);
  for (let k = 0; k < size; k++) {
    let pivot = k;
    for (let i = k + 1; i < size; i++) if (Math.abs(m[i]?.[k] as number) > Math.abs(m[pivot]?.[k] as number)) pivot = i;
    [m[k], m[pivot]] = [m[pivot] as number[], m[k] as number[]];
    const top = m[k] as number[];
    for (let i = k + 1; i < size; i++) {
      const row = m[i] as number[];
      const factor = (row[k] as number) / (top[k] as number);
      if (factor !== 0) for (let j = k; j <= size; j++) row[j] = (row[j] as number) - factor * (top[j] as number);
    }
  }
  const x: number[] = Array.from({ length: size }, () => 0);
  for (let k = size - 1; k >= 0; k--) {
    const row = m[k] as number[];
    let sum = row[size] as number;
    for (let j = k + 1; j < size; j++) sum -= (row[j] as number) * (x[j] as number);
    x[k] = sum / (row[k] as number);
  }
  return x;
}
