import { onceEach } from '../../../compute/lazy-value.js';
import type { Edge, ServiceGraph } from './graph.js';

/** A state of everything that may stand one way or another: one number a choice. */
export type World = readonly number[];

/** More states than this are not gone through one by one: what is over stays open on every side at once, which is worse than any. */
const MOST_WORLDS = 1024;

/** Whether an edge conducts in a state, apart from its link. -1 stands for every state at once. */
export const conducts = ({ when }: Edge, world: World): boolean =>
  when === undefined || world[when.choice] === -1 || world[when.choice] === when.is;

/** Edges by the vertex that they lead to: what may feed it. */
export const feeders = onceEach((graph: ServiceGraph): readonly (readonly { readonly edge: Edge; readonly from: number }[])[] => {
  const into: { edge: Edge; from: number }[][] = graph.vertices.map(() => []);
  for (const edge of graph.edges) {
    into[edge.to]?.push({ edge, from: edge.from });
    if (!edge.oneWay) into[edge.from]?.push({ edge, from: edge.to });
  }
  return into;
});

/** Everything that feeds some vertices in one state, the vertices included; `open` are links that part. */
export function feeding(
  into: ReturnType<typeof feeders>,
  targets: readonly number[],
  world: World,
  open: ReadonlySet<number>,
): ReadonlySet<number> {
  const seen = new Set(targets);
  const queue = [...targets];
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    for (const { edge, from } of into[at] ?? []) {
      if (seen.has(from) || !conducts(edge, world) || (edge.link !== undefined && open.has(edge.link))) continue;
      seen.add(from);
      queue.push(from);
    }
  }
  return seen;
}

/** Edges that conduct in some states only. */
const openEdges = onceEach(({ edges }: ServiceGraph): readonly Edge[] => edges.filter(({ when }) => when !== undefined));

/** Every state that matters to some vertices: each choice that may feed them in each of its states. */
export function worldsFor(graph: ServiceGraph, into: ReturnType<typeof feeders>, targets: readonly number[]): readonly World[] {
  const anyhow = graph.choices.map(() => -1);
  const near = feeding(into, targets, anyhow, new Set());
  const matters = graph.choices.map(() => false);
  for (const { from, to, when } of openEdges(graph)) if (when && near.has(from) && near.has(to)) matters[when.choice] = true;
  let worlds: World[] = [graph.choices.map((_, i) => (matters[i] ? -1 : 0))];
  graph.choices.forEach(({ states }, choice) => {
    if (!matters[choice] || worlds.length * states > MOST_WORLDS) return;
    worlds = worlds.flatMap((world) =>
      Array.from({ length: states }, (_, is) => world.map((now, i) => (i === choice ? is : now))),
    );
  });
  return worlds;
}
