import { joinedTo, type ServiceGraph, type Vertex } from './graph.js';
import { FlowNetwork } from './max-flow.js';

/** One action weighs so much that no saving in ease outweighs one action more. */
const ONE_ACTION = 1_000_000;
/** A source's own leads come off only where no number of switches and valves would do. */
const LAST_RESORT = 1000 * ONE_ACTION;
const NEVER = Number.MAX_SAFE_INTEGER / 4;

export interface Cut {
  readonly cut: readonly Vertex[];
  /** Sources from which a way leads to the target past nothing that can be opened. */
  readonly uncut: readonly string[];
}

/**
 * The fewest vertices that part a target from every source: minimum cut by maximum flow, each vertex split in two with the cost of
 * cutting it between. As few sources as can be are taken apart themselves; of cuts with equally few vertices then, the one of least
 * `accessCost` (0–999 each), nearest to the target.
 */
export function minimumCut(
  graph: ServiceGraph,
  targets: readonly string[],
  sources: readonly string[],
  accessCost: (vertex: Vertex) => number,
): Cut {
  const target = new Set(targets);
  const bare = joinedTo(graph, targets, (vertex) => vertex.cuttable && !target.has(vertex.key));
  const uncut = sources.filter((key) => bare.has(key));
  const feeding = sources.filter((key) => !bare.has(key));
  if (feeding.length === 0) return { cut: [], uncut };
  const keys = [...graph.keys()];
  const number = new Map(keys.map((key, i) => [key, i] as const));
  const into = (key: string): number => 2 * (number.get(key) as number);
  const [supply, sink] = [2 * keys.length, 2 * keys.length + 1];
  const network = new FlowNetwork(2 * keys.length + 2);
  const costOf = ({ lastResort }: Vertex): number => ONE_ACTION + (lastResort ? LAST_RESORT : 0);
  for (const vertex of graph.values()) {
    const cuttable = vertex.cuttable && !target.has(vertex.key);
    network.join(into(vertex.key), into(vertex.key) + 1, cuttable ? costOf(vertex) + accessCost(vertex) : NEVER);
    for (const next of vertex.beside) network.join(into(vertex.key) + 1, into(next), NEVER);
  }
  for (const key of feeding) network.join(supply, into(key), NEVER);
  for (const key of target) if (graph.has(key)) network.join(into(key), sink, NEVER);
  network.maxFlow(supply, sink);
  const reaches = network.reaching(sink);
  const cut = [...graph.values()].filter(({ key }) => !reaches[into(key)] && reaches[into(key) + 1]);
  return { cut, uncut };
}
