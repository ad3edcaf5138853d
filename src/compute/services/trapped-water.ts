import { distance, type Vec3 } from '../../geometry/vector.js';
import type { NodeKind, Run, ServiceNode } from '../../records/index.js';
import type { TrappedWater } from './types.js';

/** A coach stands on ground that falls so much along its length. Project default. */
const PARKED_SLOPE = 0.03;
/** Less than this is a drop in a joint, not a low point, L. */
const LEAST_LITRES = 0.01;
/** Where water leaves an opened line: its drains, its taps and appliances, and the tank that it comes from. */
const OUTLETS: readonly NodeKind[] = ['drain', 'load', 'device', 'source'];

interface Pipe {
  readonly run: string;
  readonly ends: readonly [number, number];
  readonly lengthMm: number;
  readonly insideMm: number;
}

/** Every corner of every line, and the straight pipes between them. */
interface Network {
  readonly corners: readonly { readonly at: Vec3; readonly outlet: boolean; readonly node?: string }[];
  readonly pipes: readonly Pipe[];
}

/**
 * Water that stays in lines after every drain, tap and valve is opened: what lies lower than the lowest way out of it. Found by
 * the flooding level of each corner (the least, over all ways to an outlet, of the way's highest place), level and with the
 * coach nose up and nose down by 3 %. `insideMm` gives a run's bore.
 */
export function trappedWater(
  runs: readonly Run[],
  nodes: ReadonlyMap<string, ServiceNode>,
  insideMm: (run: Run) => number,
): readonly TrappedWater[] {
  const network = networkOf(runs, nodes, insideMm);
  const level = pools(network, 0);
  const tilted = [...pools(network, PARKED_SLOPE), ...pools(network, -PARKED_SLOPE)];
  const lowest = new Map<number, TrappedWater>();
  for (const pool of level) {
    lowest.set(pool.corner, {
      ...told(network, pool),
      levelLitres: pool.litres,
      slopeLitres: 0,
    });
  }
  for (const pool of tilted) {
    const before = lowest.get(pool.corner) ?? {
      ...told(network, pool),
      levelLitres: 0,
      slopeLitres: 0,
    };
    if (pool.litres > before.slopeLitres) lowest.set(pool.corner, { ...before, slopeLitres: pool.litres });
  }
  const most = (one: TrappedWater): number => Math.max(one.levelLitres, one.slopeLitres);
  return [...lowest.values()].sort((a, b) => most(b) - most(a));
}

/**
 * What runs out of each drain when every drain is opened and air comes in above: the water of each pipe, less what stays in low
 * places, goes to the drain over the lowest high place, then the nearest. Litres by the drain's node id, level.
 */
export function drainedLitres(
  runs: readonly Run[],
  nodes: ReadonlyMap<string, ServiceNode>,
  insideMm: (run: Run) => number,
): ReadonlyMap<string, number> {
  const network = networkOf(runs, nodes, insideMm);
  const heights = network.corners.map(({ at }) => at[2]);
  const kept = floodLevels(network, heights).level;
  const drains = {
    ...network,
    corners: network.corners.map((one) => ({
      ...one,
      outlet: one.node !== undefined && nodes.get(one.node)?.nodeKind === 'drain',
    })),
  };
  const { outlet } = floodLevels(drains, heights);
  const litres = new Map<string, number>();
  for (const pipe of network.pipes) {
    const drain = outlet[lower(pipe, heights)];
    const node = drain === undefined ? undefined : network.corners[drain]?.node;
    if (node === undefined) continue;
    litres.set(node, (litres.get(node) ?? 0) + fullLitres(pipe) - heldLitres(pipe, heights, kept));
  }
  return litres;
}

function networkOf(runs: readonly Run[], nodes: ReadonlyMap<string, ServiceNode>, insideMm: (run: Run) => number): Network {
  const corners: { at: Vec3; outlet: boolean; node?: string }[] = [];
  const byNode = new Map<string, number>();
  const corner = (at: Vec3, node?: string): number => {
    const known = node === undefined ? undefined : byNode.get(node);
    if (known !== undefined) return known;
    const { nodeKind: kind, role } = (node === undefined ? undefined : nodes.get(node)) ?? {};
    // A pipe that falls into its tank empties there.
    corners.push({
      at,
      outlet: role === 'tank' || (kind !== undefined && OUTLETS.includes(kind)),
      ...(node === undefined ? {} : { node }),
    });
    if (node !== undefined) byNode.set(node, corners.length - 1);
    return corners.length - 1;
  };
  const pipes = runs.flatMap((run) => {
    const last = run.path.length - 1;
    const numbers = run.path.map((at, i) => corner(at, i === 0 ? run.from : i === last ? run.to : undefined));
    return numbers.slice(1).map((end, i): Pipe => {
      const start = numbers[i] as number;
      const lengthMm = distance(run.path[i] as Vec3, run.path[i + 1] as Vec3);
      return {
        run: run.id,
        ends: [start, end],
        lengthMm,
        insideMm: insideMm(run),
      };
    });
  });
  return { corners, pipes };
}

interface Pool {
  /** The lowest corner of the pool. */
  readonly corner: number;
  readonly litres: number;
  readonly runs: readonly string[];
  readonly noOutlet: boolean;
}

const told = (network: Network, pool: Pool): Pick<TrappedWater, 'runs' | 'at' | 'noOutlet'> => ({
  runs: pool.runs,
  at: (network.corners[pool.corner] as { at: Vec3 }).at,
  noOutlet: pool.noOutlet,
});

/** The pools that stand in a network on a slope (rise towards the rear), each by its lowest corner. */
function pools(network: Network, slope: number): readonly Pool[] {
  const heights = network.corners.map(({ at }) => at[2] + slope * at[0]);
  const flood = floodLevels(network, heights).level;
  const litres = network.pipes.map((pipe) => heldLitres(pipe, heights, flood));
  const pool = joinPools(network, heights, flood, litres);
  const byPool = new Map<number, { corner: number; litres: number; runs: Set<string> }>();
  network.pipes.forEach((pipe, i) => {
    const held = litres[i] as number;
    if (held <= 0) return;
    const low = lower(pipe, heights);
    const key = pool(low);
    const known = byPool.get(key) ?? {
      corner: low,
      litres: 0,
      runs: new Set<string>(),
    };
    known.litres += held;
    known.runs.add(pipe.run);
    if ((heights[low] as number) < (heights[known.corner] as number)) known.corner = low;
    byPool.set(key, known);
  });
  return [...byPool.values()]
    .filter((one) => one.litres >= LEAST_LITRES)
    .map((one) => ({
      ...one,
      runs: [...one.runs],
      noOutlet: flood[one.corner] === Infinity,
    }));
}

interface Flood {
  /** Least, over all ways from a corner to an outlet, of the highest place on the way; infinite where no way leads out. */
  readonly level: readonly number[];
  /** The outlet that this way leads to, the nearest of equals. */
  readonly outlet: readonly (number | undefined)[];
}

function floodLevels({ corners, pipes }: Network, heights: readonly number[]): Flood {
  const beside = corners.map((): { to: number; lengthMm: number }[] => []);
  for (const { ends, lengthMm } of pipes) {
    beside[ends[0]]?.push({ to: ends[1], lengthMm });
    beside[ends[1]]?.push({ to: ends[0], lengthMm });
  }
  const level = corners.map((one, i) => (one.outlet ? (heights[i] as number) : Infinity));
  const away = corners.map((one) => (one.outlet ? 0 : Infinity));
  const outlet = corners.map((one, i) => (one.outlet ? i : undefined));
  const queue = corners.flatMap((one, i) => (one.outlet ? [i] : []));
  // Levels, and ways of one level, only ever sink towards their final value: taking corners in any order ends at the same place.
  while (queue.length > 0) {
    const here = queue.shift() as number;
    for (const { to, lengthMm } of beside[here] as { to: number; lengthMm: number }[]) {
      const high = Math.max(level[here] as number, heights[to] as number);
      const far = (away[here] as number) + lengthMm;
      if (high > (level[to] as number) || (high === level[to] && far >= (away[to] as number))) continue;
      level[to] = high;
      away[to] = far;
      outlet[to] = outlet[here];
      queue.push(to);
    }
  }
  return { level, outlet };
}

const lower = ({ ends: [a, b] }: Pipe, heights: readonly number[]): number =>
  (heights[a] as number) <= (heights[b] as number) ? a : b;

/** Litres of a pipe below its flooding level. */
function heldLitres(pipe: Pipe, heights: readonly number[], flood: readonly number[]): number {
  const low = lower(pipe, heights);
  const high = pipe.ends[0] === low ? pipe.ends[1] : pipe.ends[0];
  const rise = (heights[high] as number) - (heights[low] as number);
  const depth = (flood[low] as number) - (heights[low] as number);
  const share = depth <= 0 ? 0 : rise === 0 ? 1 : Math.min(1, depth / rise);
  return share * fullLitres(pipe);
}

const fullLitres = ({ lengthMm, insideMm }: Pipe): number => (lengthMm * (Math.PI / 4) * insideMm ** 2) / 1e6;

/** Corners under water belong to one pool where a pipe under water joins them. Gives each corner's pool by a number. */
function joinPools(
  { corners, pipes }: Network,
  heights: readonly number[],
  flood: readonly number[],
  litres: readonly number[],
): (corner: number) => number {
  const parent = corners.map((_, i) => i);
  const find = (i: number): number => {
    let at = i;
    while (parent[at] !== at) at = parent[at] as number;
    return at;
  };
  const wet = (i: number): boolean => (flood[i] as number) > (heights[i] as number);
  pipes.forEach(({ ends: [a, b] }, i) => {
    if ((litres[i] as number) > 0 && wet(a) && wet(b)) parent[find(a)] = find(b);
  });
  return find;
}
