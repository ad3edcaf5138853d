import { onceEach } from '../../compute/lazy-value.js';
import type { ServiceFacts } from './graph/facts.js';

/** What has been done: nodes that were switched off, shut or taken off, and circuits whose fuse or breaker is out. */
export interface Done {
  readonly nodes: ReadonlySet<string>;
  readonly circuits: ReadonlySet<string>;
}

type Node = ServiceFacts['nodes'][number];
type Run = ServiceFacts['runs'][number];

const SOURCES = [
  'battery',
  'generator',
  'alternator',
  'shore inlet',
  'solar panel',
  'tank',
  'cylinder',
  'city inlet',
  'reservoir',
];
const PARTS = ['switch', 'breaker', 'fuse', 'shut-off', 'plug'];
const PASSES = ['charger', 'converter', 'inverter', 'solar regulator', 'gas regulator', 'check valve', 'diode', 'heater'];
const DRIVES = ['pump', 'compressor'];
/** From which side of an inverter charger power comes to which. */
const INVERTS: Readonly<Record<string, readonly string[]>> = { dc: ['ac in'], 'ac out': ['ac in', 'dc'], 'ac in': [] };
/** More positions of changeovers than this are taken as all at once. */
const MOST_POSITIONS = 256;

/** A run about to be left at one of its ends, walking towards what may feed it. */
interface Step {
  readonly run: Run;
  readonly end: 'from' | 'to';
}

/**
 * Sources that still reach some runs and nodes, in any position of any changeover and on any side that is not recorded. Walks the
 * records from run to run towards what feeds them; shares nothing with the graph on which the actions were chosen.
 */
export function sourcesReaching(
  facts: ServiceFacts,
  start: { readonly nodes: readonly string[]; readonly runs: readonly string[] },
  done: Done,
): readonly string[] {
  const walk = new Walk(facts, done);
  // With every changeover on all its supplies at once more is walked than in any position: others than those make no difference.
  const met = new Set<string>();
  const anyhow = walk.from(start, new Map(), met);
  const reached = new Set(
    met.size === 0 ? anyhow : positions(facts, met).flatMap((position) => walk.from(start, position, new Set())),
  );
  return facts.nodes.filter((node) => reached.has(node.id)).map((node) => node.id);
}

/** Which supply each changeover stands on. */
type Position = ReadonlyMap<string, string>;

function positions({ nodes, runs }: ServiceFacts, of: ReadonlySet<string>): readonly Position[] {
  let all: Map<string, string>[] = [new Map()];
  for (const node of nodes) {
    if (node.role !== 'changeover' || !of.has(node.id)) continue;
    const sides = runs.flatMap((run) => [
      ...(run.from === node.id ? [run.fromSide] : []),
      ...(run.to === node.id ? [run.toSide] : []),
    ]);
    const supplies = [...new Set(sides)].filter((side): side is string => side?.startsWith('supply') === true);
    if (supplies.length < 2 || all.length * supplies.length > MOST_POSITIONS) continue;
    all = all.flatMap((one) => supplies.map((supply) => new Map(one).set(node.id, supply)));
  }
  return all;
}

/** The records as they are walked, made once for a shell. */
const groundOf = onceEach((facts: ServiceFacts) => {
  const at = new Map<string, Step[]>();
  for (const run of facts.runs)
    for (const end of ['from', 'to'] as const) {
      const steps = at.get(run[end]);
      if (steps) steps.push({ run, end });
      else at.set(run[end], [{ run, end }]);
    }
  return {
    nodes: new Map(facts.nodes.map((node) => [node.id, node])) as ReadonlyMap<string, Node>,
    runs: new Map(facts.runs.map((run) => [run.id, run])) as ReadonlyMap<string, Run>,
    at: at as ReadonlyMap<string, readonly Step[]>,
    protectedAt: new Map(
      facts.circuits.flatMap(({ id, medium, protection }) =>
        protection?.at !== undefined && ['dc', 'ac', 'data'].includes(medium) && ['fuse', 'breaker'].includes(protection.kind)
          ? [[id, protection.at] as const]
          : [],
      ),
    ) as ReadonlyMap<string, string>,
  };
});

class Walk {
  private readonly nodes: ReadonlyMap<string, Node>;
  private readonly at: ReadonlyMap<string, readonly Step[]>;
  private readonly protectedAt: ReadonlyMap<string, string>;
  private readonly runs: ReadonlyMap<string, Run>;

  constructor(
    private readonly facts: ServiceFacts,
    private readonly done: Done,
  ) {
    const { nodes, runs, at, protectedAt } = groundOf(facts);
    this.runs = runs;
    this.nodes = nodes;
    this.at = at;
    this.protectedAt = protectedAt;
  }

  /** `met` takes the changeovers that were walked through. */
  from(
    start: { readonly nodes: readonly string[]; readonly runs: readonly string[] },
    position: Position,
    met: Set<string>,
  ): readonly string[] {
    const sources = new Set<string>();
    const seen = new Set<string>();
    const queue: Step[] = [];
    const visit = ({ run, end }: Step): void => {
      const key = JSON.stringify([run.id, end]);
      if (!seen.has(key)) queue.push({ run, end });
      seen.add(key);
    };
    const other = ({ run, end }: Step): Step => ({ run, end: end === 'from' ? 'to' : 'from' });
    const nodesSeen = new Set<string>();
    const visitNode = (id: string): void => {
      if (nodesSeen.has(id)) return;
      nodesSeen.add(id);
      const node = this.nodes.get(id);
      if (!node) return;
      // The node itself: whatever comes to any side of it.
      for (const step of this.at.get(id) ?? []) if (!this.isOut(step)) visit(other(step));
      if (this.isSource(node) && !this.done.nodes.has(id)) sources.add(id);
      if (this.drives(node)) drivenBy(node);
    };
    const drivenBy = (node: Node): void => {
      const wires = this.driven(node);
      wires.forEach(visitNode);
      if (wires.length === 0) sources.add(node.id);
    };
    for (const id of start.nodes) visitNode(id);
    for (const id of start.runs) {
      const run = this.runs.get(id);
      if (run) for (const end of ['from', 'to'] as const) visit({ run, end });
    }
    for (let step = queue.pop(); step; step = queue.pop()) {
      const node = this.nodes.get(step.run[step.end]);
      if (!node) continue;
      const beside = (this.at.get(node.id) ?? []).filter((one) => one.run !== step?.run || one.end !== step?.end);
      if (node.role === 'changeover') met.add(node.id);
      for (const next of beside) if (this.passes(node, next, step, position)) visit(other(next));
      const cut = this.isOut(step);
      if (!cut && this.isSource(node) && !this.done.nodes.has(node.id)) sources.add(node.id);
      if (!cut && this.drives(node) && this.sideOf(node, step) !== 'in') drivenBy(node);
    }
    return [...sources];
  }

  private isSource({ role, nodeKind, medium }: Node): boolean {
    if (role !== undefined && SOURCES.includes(role)) return true;
    if (role === undefined && nodeKind === 'source') return true;
    const isEnd = role === undefined ? nodeKind === 'load' : ['outlet', 'appliance', 'tap', 'fixture'].includes(role);
    return medium === 'drain' && isEnd && nodeKind !== 'drain';
  }

  private drives({ role }: Node): boolean {
    return role !== undefined && DRIVES.includes(role);
  }

  /** Nodes of the wires of a pump's own equipment. */
  private driven({ of = [] }: Node): readonly string[] {
    return this.facts.nodes
      .filter((one) => (one.medium === 'dc' || one.medium === 'ac') && one.of?.some((id) => of.includes(id)))
      .map((one) => one.id);
  }

  private isFused({ run, end }: Step): boolean {
    const node = this.nodes.get(run[end]);
    if (run.circuit === undefined || node?.role === 'fuse' || node?.role === 'breaker') return false;
    return this.protectedAt.get(run.circuit) === run[end];
  }

  private isOut(step: Step): boolean {
    return this.isFused(step) && this.done.circuits.has(step.run.circuit as string);
  }

  /** Whether what comes by one run may go on by another through a node. */
  private passes(node: Node, by: Step, into: Step, position: Position): boolean {
    const [a, b] = [this.sideOf(node, by), this.sideOf(node, into)];
    // Runs of one circuit meet on the far side of its fuse.
    const sameFuse = this.isFused(by) && this.isFused(into) && by.run.circuit === into.run.circuit;
    if (!sameFuse && (this.isOut(by) || this.isOut(into))) return false;
    const { role, nodeKind } = node;
    if (a === undefined || b === undefined || a === b) return true;
    if ((role === undefined && nodeKind === 'valve') || (role !== undefined && PARTS.includes(role)))
      return !this.done.nodes.has(node.id);
    if (role === 'changeover') {
      const supply = a === 'load' ? b : b === 'load' ? a : undefined;
      return supply !== undefined && (position.get(node.id) ?? supply) === supply;
    }
    if (role !== undefined && (PASSES.includes(role) || DRIVES.includes(role))) return a === 'in' && b === 'out';
    return role === 'inverter charger' ? INVERTS[b]?.includes(a) === true : true;
  }

  /** The side of a run end; undefined where it may be any. */
  private sideOf(node: Node, { run, end }: Step): string | undefined {
    const typed = (step: Step): string | undefined => (step.end === 'from' ? step.run.fromSide : step.run.toSide);
    const own = typed({ run, end });
    const { role, nodeKind } = node;
    const pair = pairOf(role, nodeKind);
    if (own !== undefined && (!pair || pair.includes(own))) return own;
    if (run.medium === 'ac' && role === 'charger') return 'in';
    if (run.medium === 'ac' && role === 'inverter') return 'out';
    const all = this.at.get(node.id) ?? [];
    if (!pair || all.length > 2) return undefined;
    const partner = all.find((one) => one.run !== run || one.end !== end);
    const taken =
      partner &&
      (typed(partner) ??
        (partner.run.medium !== 'ac' ? undefined : role === 'charger' ? 'in' : role === 'inverter' ? 'out' : undefined));
    if (taken !== undefined && pair.includes(taken)) return taken === pair[0] ? pair[1] : pair[0];
    if (pair[0] !== 'line') return undefined;
    return all[0]?.run === run && all[0].end === end ? 'line' : 'load';
  }
}

function pairOf(role: string | undefined, kind: string): readonly [string, string] | undefined {
  if (role === undefined) return kind === 'valve' ? ['line', 'load'] : undefined;
  if (PARTS.includes(role)) return ['line', 'load'];
  return PASSES.includes(role) || DRIVES.includes(role) ? ['in', 'out'] : undefined;
}
