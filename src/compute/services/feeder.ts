import type { Circuit, Run, ServiceNode } from '../../records/index.js';
import { onceEach } from '../lazy-value.js';
import { gives, holdsUp } from './supplies.js';
import { conductorC, resistanceOhm, type Wire } from './wire.js';

/** What a circuit hangs on: the wires from a source to where the circuit begins. */
export interface Feeder {
  readonly source: string;
  /** From the circuit back to the source. */
  readonly runs: readonly string[];
  readonly dropV: number;
  /** Runs whose conductor or length is not recorded: what is lost in them is not in the drop. */
  readonly notCounted: readonly string[];
}

interface Around {
  readonly nodes: ReadonlyMap<string, ServiceNode>;
  readonly circuits: ReadonlyMap<string, Circuit>;
  readonly runs: readonly Run[];
  readonly lengthMm: (run: Run) => number;
  /** Undefined where its conductor or its length is not recorded. */
  readonly wireOf: (run: Run) => Wire | undefined;
}

/** What a circuit draws by its own word, A. */
export const statedA = ({ loadA, loadW, voltageV }: Circuit): number | undefined =>
  loadA ?? (loadW !== undefined && voltageV ? loadW / voltageV : undefined);

/**
 * The wires between a circuit’s root and each source, the shortest way to each, and of them those that lose most: V = Σ I R there and
 * back. A feeder carries what its own record says that it feeds, a link without a circuit what the next feeder does, and the link that
 * only this circuit hangs on this circuit’s load. Undefined where the root is a source, or no source is joined to it.
 */
export function feederOf(circuit: Circuit, root: string, ownA: number, around: Around): Feeder | undefined {
  const here = around.nodes.get(root);
  if (!here || gives(here, circuit.medium)) return undefined;
  const ways = waysToSources(circuit, root, around).map((way) => ({ ...way, dropV: dropAlong(way.runs, root, ownA, around) }));
  const worst = ways.reduce<(typeof ways)[number] | undefined>((a, b) => (a && a.dropV >= b.dropV ? a : b), undefined);
  return (
    worst && {
      source: worst.source,
      runs: worst.runs.map(({ id }) => id),
      dropV: worst.dropV,
      notCounted: worst.runs.filter((run) => around.wireOf(run) === undefined).map(({ id }) => id),
    }
  );
}

/** The shortest way from a circuit’s root to each source, over wires of its medium that are not its own. */
export function waysToSources(
  circuit: Circuit,
  root: string,
  { nodes, runs, lengthMm }: Pick<Around, 'nodes' | 'runs' | 'lengthMm'>,
): readonly { readonly source: string; readonly runs: readonly Run[] }[] {
  const usable = (run: Run): boolean =>
    run.medium === circuit.medium && run.circuit !== circuit.id && !run.abandoned && !run.spare;
  const ends = runsByEnd(runs);
  const away = new Map<string, number>([[root, 0]]);
  const by = new Map<string, Run>();
  const settled = new Set<string>();
  const found: { readonly source: string; readonly runs: readonly Run[] }[] = [];
  for (;;) {
    const at = nearestOf(away, settled);
    if (at === undefined) return found;
    settled.add(at);
    const node = nodes.get(at);
    if (node && at !== root && holdsUp(node, circuit.medium)) {
      found.push({ source: at, runs: wayBack(at, root, by) });
      continue;
    }
    for (const run of ends.get(at) ?? []) {
      if (!usable(run)) continue;
      const to = run.from === at ? run.to : run.from;
      const far = (away.get(at) as number) + lengthMm(run);
      if (settled.has(to) || far >= (away.get(to) ?? Infinity)) continue;
      away.set(to, far);
      by.set(to, run);
    }
  }
}

/** Runs by the ends that they have, in their order. */
const runsByEnd = onceEach((runs: readonly Run[]): ReadonlyMap<string, readonly Run[]> => {
  const ends = new Map<string, Run[]>();
  for (const run of runs) {
    for (const end of new Set([run.from, run.to])) {
      const there = ends.get(end);
      if (there) there.push(run);
      else ends.set(end, [run]);
    }
  }
  return ends;
});

/** The nearest that is not settled; of those as near, the one that was found first. */
function nearestOf(away: ReadonlyMap<string, number>, settled: ReadonlySet<string>): string | undefined {
  let best: string | undefined;
  let least = Infinity;
  for (const [id, far] of away) {
    if (far >= least || settled.has(id)) continue;
    least = far;
    best = id;
  }
  return best;
}

/** From the root to the source. */
function wayBack(source: string, root: string, by: ReadonlyMap<string, Run>): readonly Run[] {
  const way: Run[] = [];
  for (let at = source; at !== root; ) {
    const run = by.get(at) as Run;
    way.unshift(run);
    at = run.from === at ? run.to : run.from;
  }
  return way;
}

function dropAlong(way: readonly Run[], root: string, ownA: number, { circuits, lengthMm, wireOf }: Around): number {
  const stated = (run: Run | undefined): number | undefined => {
    const circuit = run?.circuit === undefined ? undefined : circuits.get(run.circuit);
    return circuit && statedA(circuit);
  };
  return way.reduce((sum, run, i) => {
    const touches = run.from === root || run.to === root;
    const next = way.slice(i).find((one) => one.circuit !== undefined);
    const amperes = stated(run) ?? (touches && run.circuit === undefined ? ownA : Math.max(ownA, stated(next) ?? 0));
    const wire = wireOf(run);
    return wire ? sum + amperes * wire.carrying * resistanceOhm(wire, lengthMm(run), conductorC(run.medium)) : sum;
  }, 0);
}
