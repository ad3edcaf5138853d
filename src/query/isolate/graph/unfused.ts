import { behaviourOf } from './behaviour.js';
import type { ServiceFacts } from './facts.js';
import { serviceGraph } from './graph.js';

/** Direct-current nodes and runs that stand between a battery, alternator or other source and the first fuse or breaker: nothing limits a short there. */
export function aheadOfFuse(facts: ServiceFacts): ReadonlySet<string> {
  const graph = serviceGraph(facts);
  const nodes = new Map(facts.nodes.map((node) => [node.id, node] as const));
  const limits = (link: number | undefined): boolean => {
    const found = link === undefined ? undefined : graph.links[link];
    const role = found && nodes.get(found.id)?.role;
    return found?.of === 'protection' || (found?.of === 'node' && (role === 'fuse' || role === 'breaker'));
  };
  const beside: number[][] = graph.vertices.map(() => []);
  for (const { from, to, oneWay, drive, link } of graph.edges) {
    if (drive || limits(link) || (oneWay && graph.vertices[from]?.of !== 'source')) continue;
    beside[from]?.push(to);
    beside[to]?.push(from);
  }
  const seen = new Set(
    facts.nodes.flatMap((node) => {
      const core = node.medium === 'dc' && behaviourOf(node).way === 'source' ? graph.sources.get(node.id) : undefined;
      return core === undefined ? [] : [core];
    }),
  );
  for (const at of seen) for (const next of beside[at] ?? []) seen.add(next);
  return new Set([...seen].flatMap((at) => (graph.vertices[at]?.of === 'protection' ? [] : [graph.vertices[at]?.id as string])));
}
