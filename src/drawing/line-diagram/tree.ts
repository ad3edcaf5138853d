import { behaviourOf } from '../../query/isolate/graph/behaviour.js';
import { endsByNode, type RunEnd } from '../../query/isolate/graph/facts.js';
import { sidesOf } from '../../query/isolate/graph/sides.js';
import type { Run, ServiceNode } from '../../records/index.js';

/** A service as it branches away from its sources: found from runs, their recorded sides and roles, and from no name. */

/** One place of the diagram: a node, or several of a kind that follow each other in one line. */
export interface Leg {
  readonly nodes: readonly ServiceNode[];
  /** Runs between the nodes of one leg. */
  readonly within: readonly Run[];
  readonly branches: readonly LegBranch[];
}

/** A run to the next leg, or to a node that stands elsewhere in the diagram: that one shows the run too. */
export type LegBranch = Noted & ({ readonly run: Run; readonly to: Leg; readonly back?: undefined } | Back);

/** A node, and its side; none where the record does not say which. */
export interface JoinedAt {
  readonly id: string;
  readonly side?: string;
}

interface Noted {
  /** Where it is joined, where that is not simply the far side of the leg before it. */
  readonly note?: JoinedAt;
}

interface Back {
  readonly run: Run;
  readonly to?: undefined;
  readonly back: string;
  /** Which way it feeds, where sides or roles say so. */
  readonly flow: 'to' | 'from' | 'joins';
  /** The side on which it ends there. */
  readonly side?: string;
}

interface Growing {
  readonly node: ServiceNode;
  /** Whose branch it is, and the run's end here; absent for a root. */
  readonly parent?: Growing;
  readonly arrival?: RunEnd;
  readonly branches: (Noted & ({ readonly run: Run; readonly to: Growing; readonly back?: undefined } | Back))[];
}

/**
 * Every node once, and every run: from all sources at the same time, so that each is reached from the nearest. What no source reaches
 * begins at the node with most runs. A run that is joined to a switch, valve or regulator on the side where the line arrives
 * hangs on the line before it, since it stays live when that is open. A line goes through a one-way node only its own way. A run
 * that closes a ring is held at both its ends.
 */
export function serviceTrees(nodes: readonly ServiceNode[], runs: readonly Run[]): readonly Leg[] {
  const byId = new Map(nodes.map((node) => [node.id, node] as const));
  const runById = new Map(runs.map((run) => [run.id, run] as const));
  const ends = endsByNode(runs);
  const endsAt = (id: string): readonly RunEnd[] => ends.get(id) ?? [];
  const sides = new Map(nodes.map((node) => [node.id, sidesOf(node, behaviourOf(node), endsAt(node.id))] as const));
  const sideOf = (id: string, end: RunEnd | undefined): string | undefined => end && sides.get(id)?.known.get(end);
  const roots: Growing[] = [];
  const seen = new Map<string, Growing>();
  /** What a run's end at a node is, seen from the run's end where the line arrives. */
  const joined = (one: Growing, end: RunEnd): Noted & { readonly before: boolean } => {
    const { node, arrival } = one;
    const all = sides.get(node.id);
    if (behaviourOf(node).sides.length === 0 || !all) return { before: false };
    const [here, there] = [sideOf(node.id, arrival), sideOf(node.id, end)];
    if (there === undefined || (arrival && here === undefined)) return { before: false, note: { id: node.id } };
    const note: JoinedAt = { id: node.id, side: there };
    const sidesHere = new Set(all.known.values());
    if (!arrival) return sidesHere.size > 1 || all.open.length > 0 ? { before: false, note } : { before: false };
    if (here === there) return one.parent ? { before: true, note } : { before: false, note };
    return behaviourOf(node).way === 'changeover' ? { before: false, note } : { before: false };
  };
  const grow = (starts: readonly ServiceNode[]): void => {
    const queue = starts.map((node): Growing => ({ node, branches: [] }));
    roots.push(...queue);
    for (const one of queue) seen.set(one.node.id, one);
    for (const one of queue) {
      const drawn = new Set<string>();
      for (const end of endsAt(one.node.id)) {
        const run = runById.get(end.run.id) as Run;
        if (run.id === one.arrival?.run.id || drawn.has(run.id)) continue;
        drawn.add(run.id);
        const other = end.end === 'from' ? run.to : run.from;
        const otherEnd = endsAt(other).find((there) => there.run.id === run.id && there.end !== end.end);
        const { before, ...noted } = joined(one, end);
        const holder = before ? (one.parent as Growing) : one;
        const next = byId.get(other);
        const [mine, theirs] = [sideOf(one.node.id, end), sideOf(other, otherEnd)];
        if (!next || seen.has(other) || isAgainst(next, theirs)) {
          const side = next && behaviourOf(next).sides.length > 0 ? theirs : undefined;
          const flow = flowOf(one.node, mine, next, theirs);
          holder.branches.push({ ...noted, run, back: other, flow, ...(side === undefined ? {} : { side }) });
          continue;
        }
        const to: Growing = { node: next, parent: holder, branches: [], ...(otherEnd ? { arrival: otherEnd } : {}) };
        seen.set(other, to);
        holder.branches.push({ ...noted, run, to });
        queue.push(to);
      }
    }
  };
  const sources = nodes.filter((node) => isRoot(node, endsAt(node.id), sideOf));
  // What makes the medium comes before what only changes it.
  grow([...sources].sort((a, b) => Number(isOneWay(a)) - Number(isOneWay(b))));
  for (;;) {
    const left = nodes.filter(({ id }) => !seen.has(id));
    if (left.length === 0) break;
    const most = left.reduce((a, b) => (endsAt(b.id).length > endsAt(a.id).length ? b : a));
    grow([most]);
  }
  return roots.map(legOf);
}

const isOneWay = (node: ServiceNode): boolean => GIVES.has(behaviourOf(node).way);
const GIVES: ReadonlySet<string> = new Set(['one way', 'drives', 'inverter charger']);

/** Sides that give out, of a one-way node. */
const OUT: ReadonlySet<string | undefined> = new Set(['out', 'ac out']);
const gives = (node: ServiceNode, side: string | undefined): boolean => isOneWay(node) && OUT.has(side);
const takes = (node: ServiceNode, side: string | undefined): boolean =>
  (isOneWay(node) && side !== undefined && !OUT.has(side) && side !== 'dc') ||
  (behaviourOf(node).way === 'changeover' && side !== undefined && side !== 'load');

/** Whether a line that arrives there would go through it the wrong way. */
const isAgainst = (node: ServiceNode, side: string | undefined): boolean =>
  gives(node, side) || (behaviourOf(node).way === 'changeover' && side === 'load');

function flowOf(
  here: ServiceNode,
  mine: string | undefined,
  there: ServiceNode | undefined,
  theirs: string | undefined,
): Back['flow'] {
  if (gives(here, mine) || (there && takes(there, theirs))) return 'to';
  if (takes(here, mine) || (there && gives(there, theirs))) return 'from';
  return 'joins';
}

/** A source, or a charger, a converter or an inverter that gives out on this service. */
function isRoot(node: ServiceNode, ends: readonly RunEnd[], sideOf: (id: string, end: RunEnd) => string | undefined): boolean {
  const { way } = behaviourOf(node);
  if (way === 'source') return true;
  return isOneWay(node) && ends.length > 0 && ends.every((end) => OUT.has(sideOf(node.id, end)));
}

/** A node with those of its kind that follow it one by one. */
function legOf(start: Growing): Leg {
  const nodes = [start.node];
  const within: Run[] = [];
  let last = start;
  for (;;) {
    const [only, ...others] = last.branches;
    if (!only || others.length > 0 || !only.to || only.note || !follows(last.node, only.to.node)) break;
    within.push(only.run);
    nodes.push(only.to.node);
    last = only.to;
  }
  const branches = last.branches.map((one): LegBranch => (one.to ? { ...one, to: legOf(one.to) } : one));
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
