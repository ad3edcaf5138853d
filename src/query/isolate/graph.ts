import type { Shell } from '../../model/shell.js';
import { partingOf } from './parting.js';
import { cutAction, isDriven, isSource, protectionNode } from './roles.js';

/** Something that carries, stores or parts a medium: a node, a run, or the fuse or breaker of a circuit. */
export interface Vertex {
  /** `node:…`, `run:…` or `protection:…` with the record's id. */
  readonly key: string;
  readonly what: 'node' | 'run' | 'protection';
  /** Node id; run id; circuit id of a protection. */
  readonly id: string;
  /** It can be opened, shut or taken apart. */
  readonly cuttable: boolean;
  readonly source: boolean;
  /** A source whose own leads or lines come off: done only where nothing else parts it from the work. */
  readonly lastResort: boolean;
  /** Keys of what it joins. */
  readonly beside: readonly string[];
}

export type ServiceGraph = ReadonlyMap<string, Vertex>;

export const nodeKey = (id: string): string => `node:${id}`;
export const runKey = (id: string): string => `run:${id}`;
const protectionKey = (circuit: string): string => `protection:${circuit}`;

/**
 * Every service of a shell as one graph. A run joins its two nodes; at the node that holds its circuit's fuse or breaker it joins that,
 * and only through it the node. Medium flows both ways: a load side may be fed back.
 */
export function serviceGraph(shell: Shell): ServiceGraph {
  const graph = new Map<string, Vertex & { readonly beside: string[] }>();
  const put = (vertex: Omit<Vertex, 'beside'>): void => void graph.set(vertex.key, { ...vertex, beside: [] });
  const join = (a: string, b: string): void => {
    const [one, other] = [graph.get(a), graph.get(b)];
    if (!one || !other || one.beside.includes(b)) return;
    one.beside.push(b);
    other.beside.push(a);
  };
  for (const node of shell.nodes) {
    const source = isSource(node);
    // A pump is stopped by its supply: its pipes stay on.
    const lastResort = source && !isDriven(node) && partingOf(node) !== undefined;
    const cuttable = source ? lastResort : cutAction(node) !== undefined;
    put({ key: nodeKey(node.id), what: 'node', id: node.id, cuttable, source, lastResort });
  }
  const protectedAt = new Map<string, string>();
  for (const circuit of shell.circuits) {
    const at = protectionNode(circuit, shell);
    if (at === undefined || !graph.has(nodeKey(at))) continue;
    protectedAt.set(circuit.id, at);
    put({ key: protectionKey(circuit.id), what: 'protection', id: circuit.id, cuttable: true, source: false, lastResort: false });
    join(protectionKey(circuit.id), nodeKey(at));
  }
  for (const run of shell.runs) {
    put({ key: runKey(run.id), what: 'run', id: run.id, cuttable: false, source: false, lastResort: false });
    for (const end of [run.from, run.to]) {
      const through = run.circuit !== undefined && protectedAt.get(run.circuit) === end;
      join(runKey(run.id), through ? protectionKey(run.circuit as string) : nodeKey(end));
    }
  }
  return graph;
}

/** Everything that is joined to some vertices without passing one that `stops`; the start is not stopped. */
export function joinedTo(graph: ServiceGraph, start: readonly string[], stops: (vertex: Vertex) => boolean): ReadonlySet<string> {
  const reached = new Set(start.filter((key) => graph.has(key)));
  const queue = [...reached];
  for (let key = queue.pop(); key !== undefined; key = queue.pop()) {
    for (const next of graph.get(key)?.beside ?? []) {
      if (reached.has(next) || stops(graph.get(next) as Vertex)) continue;
      reached.add(next);
      queue.push(next);
    }
  }
  return reached;
}
