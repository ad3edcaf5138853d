import type { ServiceFacts } from './facts.js';
import { type Link, type ServiceGraph, serviceGraph } from './graph.js';

/** The fuses and breakers that a short on a run would open first, by the run. A run that a source reaches past none has `bare` sources. */
export interface Guards {
  readonly links: readonly Link[];
  readonly bare: readonly string[];
}

/**
 * For each run the nearest fuse or breaker on every way from a source: the protection that guards it, wherever it is recorded. What
 * passes one way only limits its own current and is not looked through.
 */
export function guardsOf(facts: ServiceFacts): (run: string) => Guards {
  const graph = serviceGraph(facts);
  const roles = new Map(facts.nodes.map((node) => [node.id, node.role] as const));
  const guards = (link: number | undefined): boolean => {
    const found = link === undefined ? undefined : graph.links[link];
    const role = found && roles.get(found.id);
    return found?.of === 'protection' || (found?.of === 'node' && (role === 'fuse' || role === 'breaker'));
  };
  const beside = neighbours(graph);
  const cores = new Map([...graph.sources].map(([id, at]) => [at, id] as const));
  const spread = (start: readonly number[], stops: (link: number | undefined) => boolean): ReadonlySet<number> => {
    const seen = new Set(start);
    for (const at of seen) for (const { to, link } of beside[at] ?? []) if (!stops(link)) seen.add(to);
    return seen;
  };
  return (run) => {
    const at = graph.ofRun.get(run);
    if (at === undefined) return { links: [], bare: [] };
    const here = spread([at], guards);
    const edge = new Map<number, number[]>();
    for (const one of here)
      for (const { to, link } of beside[one] ?? [])
        if (link !== undefined && guards(link) && !here.has(to)) edge.set(link, [...(edge.get(link) ?? []), to]);
    const links = [...edge].filter(([, beyond]) => {
      // Beyond the device, by whatever way but back through here.
      const seen = new Set(beyond);
      for (const one of seen) for (const { to } of beside[one] ?? []) if (!here.has(to)) seen.add(to);
      return [...seen].some((one) => cores.has(one));
    });
    return {
      links: links.map(([link]) => graph.links[link] as Link),
      bare: [...here].flatMap((one) => cores.get(one) ?? []),
    };
  };
}

function neighbours({ vertices, edges }: ServiceGraph): readonly (readonly { readonly to: number; readonly link?: number }[])[] {
  const beside: { to: number; link?: number }[][] = vertices.map(() => []);
  for (const { from, to, oneWay, drive, link } of edges) {
    const core = vertices[from]?.of === 'source';
    if (drive || (oneWay && !core)) continue;
    const by = link === undefined ? {} : { link };
    beside[from]?.push({ to, ...by });
    beside[to]?.push({ to: from, ...by });
  }
  return beside;
}
