import type { Computed } from '../../compute/figures.js';
import type { ServiceNode } from '../../model/services.js';
import type { Isolation, IsolationAction } from '../lookup/types.js';
import { electricNodesOf } from './drives.js';
import { joinedTo, nodeKey, runKey, type ServiceGraph, serviceGraph, type Vertex } from './graph.js';
import { minimumCut } from './minimum-cut.js';
import { partingOf, staysLive } from './parting.js';
import { type Done, sourcesReaching } from './proof.js';
import { cutAction, isDriven, isSource, protectionNode } from './roles.js';
import { type Targets, targetsOf } from './targets.js';

/**
 * What to switch, shut and take apart before work on a record, and the sources that are left. Takes a node, run, circuit, component,
 * tank, zone or access panel. Undefined for an unknown id and where no service is recorded at it.
 */
export function isolate(assessment: Computed, id: string): Isolation | undefined {
  const { shell } = assessment.model;
  const entry = shell.byId.get(id);
  const targets = entry && targetsOf(entry, assessment);
  if (!entry || !targets) return undefined;
  const look = lookUps(assessment);
  const graph = serviceGraph(shell);
  const keys = [...targets.nodes.map(nodeKey), ...targets.runs.map(runKey)];
  const driven = targets.nodes.filter((node) => look.isDriven(node));
  const sources = sourcesReaching(shell, targets, NOTHING_DONE).filter((source) => !driven.includes(source));
  const own = new Set(targets.nodes);
  const feeding = sources.filter((source) => !own.has(source)).map(nodeKey);
  const { cut } = minimumCut(graph, keys, feeding, look.accessCost);
  const reaching = sourcesReaching(shell, targets, doneBy(cut)).filter((source) => !driven.includes(source));
  const stopped = stopDrives(
    assessment,
    graph,
    reaching.filter((source) => !own.has(source)),
    look,
  );
  const sourcesLeft = reaching.filter((source) => !stopped.sources.includes(source));
  const side = joinedTo(graph, keys, (vertex) => cut.includes(vertex));
  const actions = [
    ...switchesFirst(unique([...stopped.cut, ...cut])).map((vertex) => look.action(vertex, side)),
    ...drains(side, graph, look),
  ];
  return {
    id,
    kind: entry.kind,
    actions,
    sources,
    sourcesLeft,
    verified: sources.length > 0,
    notes: notes(targets, {
      sources,
      sourcesLeft,
      own,
      driven,
      stopped: stopped.sources,
      live: sources.filter((source) => staysLive(look.nodes.get(source) as ServiceNode)),
    }),
  };
}

const NOTHING_DONE: Done = { nodes: new Set<string>(), circuits: new Set<string>() };

/** Leads come off when everything that can be switched off is off. */
const switchesFirst = (cut: readonly Vertex[]): readonly Vertex[] => [
  ...cut.filter((vertex) => !vertex.lastResort),
  ...cut.filter((vertex) => vertex.lastResort),
];

const unique = (some: readonly Vertex[]): readonly Vertex[] => [...new Map(some.map((vertex) => [vertex.key, vertex])).values()];

const doneBy = (cut: readonly Vertex[]): Done => ({
  nodes: new Set(cut.filter(({ what }) => what === 'node').map((vertex) => vertex.id)),
  circuits: new Set(cut.filter(({ what }) => what === 'protection').map((vertex) => vertex.id)),
});

/** A pump that no valve parts from the place of work is stopped by its own supply, where that is recorded and can be proved dead. */
function stopDrives(
  { model: { shell } }: Computed,
  graph: ServiceGraph,
  left: readonly string[],
  look: LookUps,
): { readonly cut: readonly Vertex[]; readonly sources: readonly string[] } {
  const stopped = left
    .filter((id) => look.isDriven(id))
    .flatMap((id) => {
      const nodes = electricNodesOf(look.nodes.get(id) as ServiceNode, shell);
      const supply = sourcesReaching(shell, { nodes, runs: [] }, NOTHING_DONE);
      if (supply.length === 0) return [];
      const { cut } = minimumCut(graph, nodes.map(nodeKey), supply.map(nodeKey), look.accessCost);
      return sourcesReaching(shell, { nodes, runs: [] }, doneBy(cut)).length === 0 ? [{ id, cut }] : [];
    });
  return { cut: stopped.flatMap(({ cut }) => cut), sources: stopped.map(({ id }) => id) };
}

type LookUps = ReturnType<typeof lookUps>;

function lookUps({ model: { shell }, figures }: Computed) {
  const nodes = new Map(shell.nodes.map((node) => [node.id, node] as const));
  const circuits = new Map(shell.circuits.map((circuit) => [circuit.id, circuit] as const));
  const access = new Map(figures.access.nodes.map((node) => [node.id, node] as const));
  /** The node where a hand goes. */
  const placeOf = (vertex: Vertex): string => {
    const circuit = vertex.what === 'protection' ? circuits.get(vertex.id) : undefined;
    return (circuit && protectionNode(circuit, shell)) ?? vertex.id;
  };
  const partingAction = (vertex: Vertex, side: ReadonlySet<string>): IsolationAction | undefined => {
    const how = vertex.lastResort ? partingOf(nodes.get(vertex.id) as ServiceNode) : undefined;
    const lines = vertex.beside.filter((key) => side.has(key)).map((key) => key.slice(key.indexOf(':') + 1));
    return how && { id: vertex.id, ...how, lines, panels: panelsTo(vertex.id) };
  };
  const panelsTo = (node: string): readonly string[] => {
    const found = access.get(node);
    if (!found || found.open) return [];
    return found.panels.filter((one) => one.reach !== 'beyond' && one.blockedBy.length === 0).map((one) => one.panel);
  };
  return {
    nodes,
    isDriven: (id: string): boolean => isDriven(nodes.get(id) as ServiceNode),
    panelsTo,
    /** Of two ways with as many actions, the one without a panel to open and without plugs to pull is the easier. */
    accessCost(vertex: Vertex): number {
      const found = access.get(placeOf(vertex));
      const shut = found?.open ? 0 : found?.inReach ? 50 : 300;
      return shut + (nodes.get(vertex.id)?.nodeKind === 'connector' && vertex.what === 'node' ? 100 : 0);
    },
    /** `side`: what stays joined to the place of work. */
    action(vertex: Vertex, side: ReadonlySet<string>): IsolationAction {
      const parted = partingAction(vertex, side);
      if (parted) return parted;
      const id = placeOf(vertex);
      const panels = panelsTo(id);
      if (vertex.what === 'protection') {
        const onSource = isSource(nodes.get(id) as ServiceNode);
        return {
          // A breaker on a generator is opened, never the generator: then the circuit names it.
          id: onSource ? vertex.id : id,
          ...(onSource ? { how: `on ${id}` } : {}),
          kind: circuits.get(vertex.id)?.protection?.kind ?? 'protection',
          action: 'open',
          circuit: vertex.id,
          panels,
        };
      }
      const how = cutAction(nodes.get(id) as ServiceNode);
      return { id, kind: how?.kind ?? 'switch', action: how?.action ?? 'open', panels };
    },
  };
}

/** Drains of the part that has been cut off, the lowest last: what is left in it comes out there. */
function drains(side: ReadonlySet<string>, graph: ServiceGraph, { nodes, panelsTo }: LookUps): readonly IsolationAction[] {
  return [...side]
    .flatMap((key) => {
      const vertex = graph.get(key);
      const node = vertex?.what === 'node' ? nodes.get(vertex.id) : undefined;
      return node?.nodeKind === 'drain' ? [node] : [];
    })
    .sort((a, b) => b.at[2] - a.at[2])
    .map(({ id }) => ({ id, kind: 'drain', action: 'drain', panels: panelsTo(id) }));
}

function notes(
  targets: Targets,
  found: {
    readonly sources: readonly string[];
    readonly sourcesLeft: readonly string[];
    readonly own: ReadonlySet<string>;
    readonly driven: readonly string[];
    readonly stopped: readonly string[];
    readonly live: readonly string[];
  },
): readonly string[] {
  const said: string[] = targets.note ? [targets.note] : [];
  if (found.sources.length === 0)
    said.push('No source is recorded on its lines: not verified. Treat it as live and under pressure.');
  if (found.driven.length > 0) {
    const each = found.driven.length > 1;
    said.push(
      `${found.driven.join(', ')} ${each ? 'drive their lines themselves: isolate their' : 'drives its line itself: isolate its'} own supply as well.`,
    );
  }
  if (found.stopped.length > 0)
    said.push(`${found.stopped.join(', ')} is stopped by its own supply, by place or name; no valve parts it from the work.`);
  const itself = found.sourcesLeft.filter((id) => found.own.has(id));
  if (itself.length > 0)
    said.push(
      `${itself.join(', ')} ${itself.length > 1 ? 'are sources themselves and cannot be cut off from themselves' : 'is a source itself and cannot be cut off from itself'}.`,
    );
  const left = found.sourcesLeft.filter((id) => !found.own.has(id));
  if (left.length > 0) said.push(`Nothing on record can be opened between it and ${left.join(', ')}.`);
  if (found.live.length > 0)
    said.push(
      `${found.live.join(', ')}: never dead. The terminals, and what lies between them and the first place opened, stay live; light keeps solar panels live.`,
    );
  said.push(
    'From the records only: lock off, then measure at the place of work before touching it. Capacitors, inverters and pressure may remain.',
  );
  return said;
}
