import { onceEach } from '../../../compute/lazy-value.js';
import type { NodeRole } from '../../../records/index.js';
import { behaviourOf } from './behaviour.js';
import { cheapestCut } from './cut.js';
import type { NodeFacts, ServiceFacts, Unknown } from './facts.js';
import { type Link, type ServiceGraph, serviceGraph } from './graph.js';
import { conducts, feeders, feeding, type World } from './reach.js';

/** What must be dead: nodes with all their sides, and runs. */
export interface DeadTargets {
  readonly nodes: readonly string[];
  readonly runs: readonly string[];
}

export interface Solution {
  /** What to open, in the order of the records. */
  readonly links: readonly Link[];
  readonly sources: readonly string[];
  /** Sources that nothing on record parts from the targets. */
  readonly left: readonly string[];
  /** What the record does not say and the answer hangs on. */
  readonly unknown: readonly Unknown[];
  /** Nodes that stay joined to the targets both ways when all is open; targets first. */
  readonly joined: readonly string[];
  /** Nodes that store, and may still give what they hold to the targets. */
  readonly storing: ReadonlySet<string>;
}

/** Work on these themselves is safe once they are stopped, unplugged or emptied; a battery, the sun or a cylinder stays as it is. */
const STOPPED: readonly NodeRole[] = ['generator', 'alternator', 'shore inlet', 'city inlet', 'tank', 'reservoir'];

/** A source that the action on it makes dead itself, not only its lines. */
const isStopped = ({ role, medium }: NodeFacts): boolean =>
  role === undefined ? medium === 'drain' : (STOPPED.includes(role) && medium !== 'gas') || medium === 'drain';

/** One shell is asked many times: its graph is made once. */
const graphOf = onceEach(serviceGraph);
const nodesOf = onceEach(
  (facts: ServiceFacts): ReadonlyMap<string, NodeFacts> => new Map(facts.nodes.map((node) => [node.id, node])),
);

/** The cheapest way to part targets from every source, what is left, and what is not known. `cost` of a link: a whole number, 1 to 1e12. */
export function solve(facts: ServiceFacts, targets: DeadTargets, cost: (link: Link) => number): Solution {
  const graph = graphOf(facts);
  const nodes = nodesOf(facts);
  const at = verticesOf(graph, targets, nodes);
  const cut = cheapestCut(graph, at, (link) => cost(graph.links[link] as Link));
  const into = feeders(graph);
  const open = new Set(cut.links);
  const still = new Set(cut.worlds.flatMap((world) => [...feeding(into, at, world, open)]));
  const fed = new Set([...still].flatMap((vertex) => idsAt(graph, vertex)));
  const parted = unsourced(graph, targets, nodes, cut.worlds);
  return {
    links: cut.links.map((link) => graph.links[link] as Link),
    sources: cut.sources,
    left: cut.uncut,
    unknown: [...facts.nodes.flatMap(({ id }) => (fed.has(id) ? (graph.unknown.get(id) ?? []) : [])), ...parted],
    joined: joinedNodes(graph, at, cut.worlds, open),
    storing: storing(graph, still, nodes),
  };
}

/** A source that stays as it is counts with its inside; everything else by its sides. */
function verticesOf(graph: ServiceGraph, targets: DeadTargets, nodes: ReadonlyMap<string, NodeFacts>): readonly number[] {
  const ofNodes = targets.nodes.flatMap((id) => {
    const node = nodes.get(id);
    const core = node && !isStopped(node) && behaviourOf(node).way === 'source' ? graph.sources.get(id) : undefined;
    return [...(graph.ofNode.get(id) ?? []), ...(core === undefined ? [] : [core])];
  });
  const ofRuns = targets.runs.flatMap((id) => graph.ofRun.get(id) ?? []);
  return [...new Set([...ofNodes, ...ofRuns])];
}

const idsAt = ({ vertices }: ServiceGraph, vertex: number): readonly string[] => {
  const found = vertices[vertex];
  return found && found.of !== 'run' ? [found.id] : [];
};

/** A heater gives what it holds at its out side only. */
function storing(graph: ServiceGraph, still: ReadonlySet<number>, nodes: ReadonlyMap<string, NodeFacts>): ReadonlySet<string> {
  return new Set(
    [...still].flatMap((vertex) => {
      const { id, of, side } = graph.vertices[vertex] as (typeof graph.vertices)[number];
      const node = nodes.get(id);
      return of === 'node' && side !== 'in' && node && behaviourOf(node).stores ? [id] : [];
    }),
  );
}

/** Targets that no source on record feeds: one of each group that is joined. */
function unsourced(
  graph: ServiceGraph,
  targets: DeadTargets,
  nodes: ReadonlyMap<string, NodeFacts>,
  worlds: readonly World[],
): readonly Unknown[] {
  const into = feeders(graph);
  const told = new Set<string>();
  const each = [
    ...targets.nodes.map((id) => ({ id, at: verticesOf(graph, { nodes: [id], runs: [] }, nodes) })),
    ...targets.runs.map((id) => ({ id, at: verticesOf(graph, { nodes: [], runs: [id] }, nodes) })),
  ];
  return each.flatMap(({ id, at }) => {
    const feeds = new Set(worlds.flatMap((world) => [...feeding(into, at, world, new Set())]));
    const node = nodes.get(id);
    if ([...graph.sources.values()].some((core) => feeds.has(core)) || told.has(id)) return [];
    if (node && behaviourOf(node).way === 'source') return [];
    for (const other of joinedNodes(graph, at, worlds, new Set())) told.add(other);
    for (const run of joinedRuns(graph, at, worlds)) told.add(run);
    return [{ id, what: 'no source is recorded on its line: record where it is fed from, or measure' }];
  });
}

const joinedRuns = (graph: ServiceGraph, at: readonly number[], worlds: readonly World[]): readonly string[] =>
  joined(graph, at, worlds, new Set()).flatMap((vertex) => {
    const found = graph.vertices[vertex];
    return found?.of === 'run' ? [found.id] : [];
  });

function joinedNodes(
  graph: ServiceGraph,
  at: readonly number[],
  worlds: readonly World[],
  open: ReadonlySet<number>,
): readonly string[] {
  return [
    ...new Set(
      joined(graph, at, worlds, open).flatMap((vertex) => {
        const found = graph.vertices[vertex];
        return found?.of === 'node' ? [found.id] : [];
      }),
    ),
  ];
}

/** What hangs together with some vertices through what is not open, both ways, nearest first. */
function joined(
  graph: ServiceGraph,
  start: readonly number[],
  worlds: readonly World[],
  open: ReadonlySet<number>,
): readonly number[] {
  const into = feeders(graph);
  const seen = new Set(start);
  for (const at of seen)
    for (const { edge, from } of into[at] ?? []) {
      if (seen.has(from) || edge.oneWay || (edge.link !== undefined && open.has(edge.link))) continue;
      if (worlds.some((world) => conducts(edge, world))) seen.add(from);
    }
  return [...seen];
}
