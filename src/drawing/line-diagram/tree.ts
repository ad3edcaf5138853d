import { behaviourOf } from '../../query/isolate/graph/behaviour.js';
import type { Run, ServiceNode } from '../../records/index.js';

/** A service as it branches away from its sources: found from runs and roles, and from no name. */

/** One place of the diagram: a node, or several of a kind that follow each other in one line. */
export interface Leg {
  readonly nodes: readonly ServiceNode[];
  /** Runs between the nodes of one leg. */
  readonly within: readonly Run[];
  readonly branches: readonly LegBranch[];
}

/** A run away from the source: to the next leg, or to a node that stands elsewhere in the diagram already. */
export type LegBranch =
  | { readonly run: Run; readonly to: Leg; readonly back?: undefined }
  | { readonly run: Run; readonly to?: undefined; readonly back: string };

interface Growing {
  readonly node: ServiceNode;
  readonly branches: ({ readonly run: Run; readonly to: Growing } | { readonly run: Run; readonly back: string })[];
}

/**
 * Every node and every run once: from all sources at the same time, so that each is reached from the nearest. What no source reaches
 * begins at the node with most runs.
 */
export function serviceTrees(nodes: readonly ServiceNode[], runs: readonly Run[]): readonly Leg[] {
  const byId = new Map(nodes.map((node) => [node.id, node] as const));
  const ends = new Map<string, Run[]>(nodes.map(({ id }) => [id, []]));
  for (const run of runs) for (const end of new Set([run.from, run.to])) ends.get(end)?.push(run);
  const roots: Growing[] = [];
  const seen = new Map<string, Growing>();
  const drawn = new Set<Run>();
  const grow = (starts: readonly ServiceNode[]): void => {
    const queue = starts.map((node): Growing => ({ node, branches: [] }));
    roots.push(...queue);
    for (const one of queue) seen.set(one.node.id, one);
    for (const one of queue) {
      for (const run of ends.get(one.node.id) ?? []) {
        if (drawn.has(run)) continue;
        drawn.add(run);
        const other = run.from === one.node.id ? run.to : run.from;
        const next = byId.get(other);
        if (!next || seen.has(other)) {
          one.branches.push({ run, back: other });
          continue;
        }
        const to: Growing = { node: next, branches: [] };
        seen.set(other, to);
        one.branches.push({ run, to });
        queue.push(to);
      }
    }
  };
  const sources = nodes.filter((node) => isRoot(node, ends.get(node.id) ?? []));
  // What makes the medium comes before what only changes it.
  grow([...sources].sort((a, b) => Number(isOneWay(a)) - Number(isOneWay(b))));
  for (;;) {
    const left = nodes.filter(({ id }) => !seen.has(id));
    if (left.length === 0) break;
    const most = left.reduce((a, b) => ((ends.get(b.id)?.length ?? 0) > (ends.get(a.id)?.length ?? 0) ? b : a));
    grow([most]);
  }
  return roots.map(legOf);
}

const isOneWay = (node: ServiceNode): boolean => behaviourOf(node).way === 'one way';

/** A source, or a charger, a converter or an inverter that gives out on this service. */
function isRoot(node: ServiceNode, runs: readonly Run[]): boolean {
  const { way } = behaviourOf(node);
  if (way === 'source' || node.nodeKind === 'source') return true;
  const sides = runs.map((run) => (run.from === node.id ? run.fromSide : run.toSide));
  return way === 'one way' && sides.length > 0 && sides.every((side) => side === 'out');
}

/** A node with those of its kind that follow it one by one. */
function legOf(start: Growing): Leg {
  const nodes = [start.node];
  const within: Run[] = [];
  let last = start;
  for (;;) {
    const [only, ...others] = last.branches;
    if (!only || others.length > 0 || !('to' in only) || !follows(last.node, only.to.node)) break;
    within.push(only.run);
    nodes.push(only.to.node);
    last = only.to;
  }
  const branches = last.branches.map(
    (one): LegBranch => ('to' in one ? { run: one.run, to: legOf(one.to) } : { run: one.run, back: one.back }),
  );
  return { nodes, within, branches };
}

/** Of one kind and role, and counted up by one: told as a row. */
function follows(a: ServiceNode, b: ServiceNode): boolean {
  if (a.nodeKind !== b.nodeKind || a.role !== b.role) return false;
  const [first, second] = [a, b].map(({ id }) => /^(?<stem>.*\D)(?<count>\d{1,3})$/u.exec(id)?.groups);
  return first !== undefined && second?.stem === first.stem && Number(second?.count) === Number(first.count) + 1;
}

/** How many rows a leg takes with all that hangs on it. */
export const rowsOf = ({ branches }: Leg): number =>
  branches.length === 0 ? 1 : branches.reduce((sum, { to }) => sum + (to ? rowsOf(to) : 1), 0);
