import type { Circuit, Run, ServiceNode } from '../../records/index.js';
import { gives } from './supplies.js';

/** One run of a circuit as the current meets it, coming from the root. */
export interface Branch {
  readonly run: Run;
  readonly lengthMm: number;
  /** The node nearer to the root. */
  readonly from: string;
  readonly to: string;
}

/** The way of the current through a circuit: from the root the shortest way to every node. */
export interface CircuitTree {
  readonly root: string;
  /** Node → the branch that leads to it; the root has none. */
  readonly into: ReadonlyMap<string, Branch>;
  /** Runs that close a ring: the current is taken to come the shorter way. */
  readonly closing: readonly Run[];
  /** Nodes of the circuit's runs that the root does not feed. */
  readonly apart: readonly string[];
}

/**
 * Where the current comes in: the source on it; else the node that holds the protection, else a panel or source among the circuit's own nodes, else where its
 * first run starts. Undefined for a circuit without runs.
 */
export function rootOf(circuit: Circuit, runs: readonly Run[], nodes: ReadonlyMap<string, ServiceNode>): string | undefined {
  const ends = runs.flatMap((run) => [run.from, run.to]);
  // A supply circuit begins at its source: what lies before the fuse loses volts too.
  const source = ends.find((id) => gives(nodes.get(id), circuit.medium));
  if (source !== undefined) return source;
  const at = circuit.protection?.at;
  if (at !== undefined && ends.includes(at)) return at;
  const ofKind = (kind: string): string | undefined => ends.find((id) => nodes.get(id)?.nodeKind === kind);
  return ofKind('panel') ?? ofKind('source') ?? runs[0]?.from;
}

/** Shortest ways from the root by length (Dijkstra). */
export function circuitTree(root: string, runs: readonly Run[], lengthMm: (run: Run) => number): CircuitTree {
  const touching = new Map<string, Run[]>();
  for (const run of runs) {
    for (const end of [run.from, run.to]) {
      const list = touching.get(end);
      if (list) list.push(run);
      else touching.set(end, [run]);
    }
  }
  const away = new Map<string, number>([[root, 0]]);
  const into = new Map<string, Branch>();
  const settled = new Set<string>();
  for (let here = nearest(away, settled); here !== undefined; here = nearest(away, settled)) {
    settled.add(here);
    for (const run of touching.get(here) ?? []) {
      const to = run.from === here ? run.to : run.from;
      const length = (away.get(here) as number) + lengthMm(run);
      if (settled.has(to) || length >= (away.get(to) ?? Infinity)) continue;
      away.set(to, length);
      into.set(to, { run, lengthMm: lengthMm(run), from: here, to });
    }
  }
  const used = new Set([...into.values()].map((branch) => branch.run));
  return {
    root,
    into,
    closing: runs.filter((run) => !used.has(run) && settled.has(run.from)),
    apart: [...touching.keys()].filter((id) => !settled.has(id)),
  };
}

function nearest(away: ReadonlyMap<string, number>, settled: ReadonlySet<string>): string | undefined {
  let best: string | undefined;
  let least = Infinity;
  for (const [id, length] of away) {
    if (!settled.has(id) && length < least) {
      least = length;
      best = id;
    }
  }
  return best;
}

/** The branches from the root to a node, in that order; empty for the root and for nodes that it does not feed. */
export function wayTo(node: string, tree: CircuitTree): readonly Branch[] {
  const way: Branch[] = [];
  for (let branch = tree.into.get(node); branch; branch = tree.into.get(branch.from)) way.unshift(branch);
  return way;
}
