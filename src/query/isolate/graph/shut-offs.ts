import type { ServiceFacts } from './facts.js';
import { type Link, type ServiceGraph, serviceGraph } from './graph.js';

/** A source and what a hand meets first on its lines. */
export interface ShutOffs {
  readonly source: string;
  /** Nearest first. */
  readonly links: readonly Link[];
}

/**
 * For every source the first switches, fuses, valves and plugs on its lines, whichever way they run: with all of them open nothing
 * but what stands before them is fed by it. Its own leads are not among them.
 */
export function shutOffs(facts: ServiceFacts): readonly ShutOffs[] {
  const graph = serviceGraph(facts);
  const onward = forward(graph);
  return [...graph.sources].map(([source, start]) => {
    const own = graph.links.findIndex((link) => link.id === source && link.of === 'source');
    const seen = new Set([start]);
    const found = new Set<number>();
    for (const at of seen) {
      for (const { to, link } of onward[at] ?? []) {
        if (link !== undefined && link !== own) found.add(link);
        else seen.add(to);
      }
    }
    return { source, links: [...found].map((link) => graph.links[link] as Link) };
  });
}

function forward({ vertices, edges }: ServiceGraph): readonly (readonly { readonly to: number; readonly link?: number }[])[] {
  const onward: { to: number; link?: number }[][] = vertices.map(() => []);
  for (const { from, to, oneWay, link } of edges) {
    const by = link === undefined ? {} : { link };
    onward[from]?.push({ to, ...by });
    if (!oneWay) onward[to]?.push({ to: from, ...by });
  }
  return onward;
}
