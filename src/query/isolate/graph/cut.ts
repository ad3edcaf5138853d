import { onceEach } from '../../../compute/lazy-value.js';
import type { ServiceGraph } from './graph.js';
import { cheapestHittingSet } from './hitting-set.js';
import { FlowNetwork } from './max-flow.js';
import { conducts, feeders, feeding, type World, worldsFor } from './reach.js';

const NEVER = Number.MAX_SAFE_INTEGER / 4;

export interface Cut {
  /** Links to open: indices. */
  readonly links: readonly number[];
  /** Sources that feed the targets with nothing opened, in any state. */
  readonly sources: readonly string[];
  /** Sources that no link parts from the targets in some state. */
  readonly uncut: readonly string[];
  readonly worlds: readonly World[];
}

/**
 * The cheapest links that part some vertices from every source in every state of every changeover and for every side that is not
 * recorded. With one state a minimum cut by maximum flow, nearest to the targets; with several the cheapest set that meets every way
 * found in any of them. `cost` of a link is a whole number above zero.
 */
export function cheapestCut(graph: ServiceGraph, targets: readonly number[], cost: (link: number) => number): Cut {
  const into = feeders(graph);
  const worlds = worldsFor(graph, into, targets);
  const reaching = (open: ReadonlySet<number>): ReadonlySet<string> =>
    new Set(
      worlds.flatMap((world) => {
        const seen = feeding(into, targets, world, open);
        return [...graph.sources].flatMap(([id, at]) => (seen.has(at) ? [id] : []));
      }),
    );
  const inOrder = (ids: ReadonlySet<string>): readonly string[] => [...graph.sources.keys()].filter((id) => ids.has(id));
  const sources = reaching(new Set());
  const uncut = reaching(everyLink(graph));
  const feedingAt = inOrder(sources)
    .filter((id) => !uncut.has(id))
    .map((id) => graph.sources.get(id) as number);
  const links = feedingAt.length === 0 ? [] : partAll(graph, { worlds, into, targets, sources: feedingAt, cost });
  return { links, sources: inOrder(sources), uncut: inOrder(uncut), worlds };
}

interface Task {
  readonly worlds: readonly World[];
  readonly into: ReturnType<typeof feeders>;
  readonly targets: readonly number[];
  readonly sources: readonly number[];
  readonly cost: (link: number) => number;
}

function partAll(graph: ServiceGraph, task: Task): readonly number[] {
  const total = (links: readonly number[]): number => links.reduce((sum, link) => sum + task.cost(link), 0);
  const cuts = task.worlds.map((world) => minimumCut(world, task));
  const dearest = cuts.reduce((a, b) => (total(b) > total(a) ? b : a));
  // No set is cheaper than the cut of one state: where that serves all, it is the cheapest. A fuse that acts in two places of the
  // graph at once is paid twice by the flow, so that this holds only where none does.
  const once = isOnce(graph);
  if (once && !wayLeft(task, new Set(dearest))) return [...dearest].sort((a, b) => a - b);
  const ways: number[][] = [];
  for (let tried: readonly number[] = once ? dearest : []; ; ) {
    const way = wayLeft(task, new Set(tried));
    if (!way) return [...tried].sort((a, b) => a - b);
    ways.push(way);
    const found = cheapestHittingSet(ways, task.cost);
    // Too many ways to weigh them all: every state's own cut together parts all states, if not at the least cost.
    if (!found) return [...new Set(cuts.flat())].sort((a, b) => a - b);
    tried = found;
  }
}

const everyLink = onceEach((graph: ServiceGraph): ReadonlySet<number> => new Set(graph.links.map((_, i) => i)));

const isOnce = onceEach(({ edges }: ServiceGraph): boolean => {
  const links = edges.flatMap(({ link }) => (link === undefined ? [] : [link]));
  return new Set(links).size === links.length;
});

/** Links on some way from a source to a target that the open ones leave, in any state. */
function wayLeft({ worlds, into, targets, sources }: Task, open: ReadonlySet<number>): number[] | undefined {
  const goal = new Set(sources);
  for (const world of worlds) {
    const before = new Map<number, { readonly at: number; readonly link?: number }>(targets.map((at) => [at, { at }]));
    const queue = [...targets];
    for (let i = 0; i < queue.length; i++) {
      const at = queue[i] as number;
      if (goal.has(at)) return linksBack(at, before);
      for (const { edge, from } of into[at] ?? []) {
        if (before.has(from) || !conducts(edge, world) || (edge.link !== undefined && open.has(edge.link))) continue;
        before.set(from, { at, ...(edge.link === undefined ? {} : { link: edge.link }) });
        queue.push(from);
      }
    }
  }
  return undefined;
}

function linksBack(start: number, before: ReadonlyMap<number, { readonly at: number; readonly link?: number }>): number[] {
  const links: number[] = [];
  for (let at = start; ; ) {
    const step = before.get(at) as { readonly at: number; readonly link?: number };
    if (step.link !== undefined) links.push(step.link);
    if (step.at === at) return links;
    at = step.at;
  }
}

/** The cheapest cut in one state: maximum flow, then the edges that cross into what still drains to the targets. */
function minimumCut(world: World, { into, targets, sources, cost }: Task): readonly number[] {
  // What does not feed the targets in this state takes no part: one line of a coach is small beside all its services.
  const place = new Map([...feeding(into, targets, world, new Set())].map((vertex, i) => [vertex, i] as const));
  const at = (vertex: number): number => place.get(vertex) as number;
  const [supply, sink] = [place.size, place.size + 1];
  const network = new FlowNetwork(place.size + 2);
  const beside = new Set([...place.keys()].flatMap((vertex) => (into[vertex] ?? []).map(({ edge }) => edge)));
  const live = [...beside].filter((edge) => place.has(edge.from) && place.has(edge.to) && conducts(edge, world));
  for (const { from, to, oneWay, link } of live) {
    const capacity = link === undefined ? NEVER : cost(link);
    network.join(at(from), at(to), capacity);
    if (!oneWay) network.join(at(to), at(from), capacity);
  }
  for (const source of sources) if (place.has(source)) network.join(supply, at(source), NEVER);
  for (const target of targets) network.join(at(target), sink, NEVER);
  network.maxFlow(supply, sink);
  const drains = network.reaching(sink);
  const crosses = (from: number, to: number): boolean => !drains[at(from)] && drains[at(to)] === true;
  return [
    ...new Set(
      live.flatMap(({ from, to, oneWay, link }) =>
        link !== undefined && (crosses(from, to) || (!oneWay && crosses(to, from))) ? [link] : [],
      ),
    ),
  ];
}
