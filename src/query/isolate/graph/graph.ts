import { type Behaviour, behaviourOf, isElectric } from './behaviour.js';
import { type CircuitFacts, endsByNode, type NodeFacts, type RunEnd, type ServiceFacts, type Unknown } from './facts.js';
import { type NodeSides, sidesOf } from './sides.js';

/** Something that a hand can open, shut, unplug or take off: it parts two places of the graph, or a source from its lines. */
export interface Link {
  /** The node where the hand goes. */
  readonly id: string;
  /** Of a circuit's own fuse or breaker that sits in that node. */
  readonly circuit?: string;
  readonly of: 'node' | 'protection' | 'source';
}

/** Medium goes from one vertex to the other; both ways unless `oneWay`; only while `link` is closed. */
export interface Edge {
  readonly from: number;
  readonly to: number;
  readonly oneWay?: boolean;
  /** Power at one end drives what comes out at the other: nothing flows from one to the other. */
  readonly drive?: boolean;
  /** Index into `links`. */
  readonly link?: number;
  /** It conducts only while the changeover stands on this supply, or the run end lies on this side. */
  readonly when?: { readonly choice: number; readonly is: number };
}

/** What the record leaves open, or a hand may turn: a changeover's position, the side of a run end. */
export interface OpenChoice {
  readonly id: string;
  /** How many states it has. */
  readonly states: number;
}

export interface Vertex {
  readonly id: string;
  readonly of: 'node' | 'run' | 'source' | 'protection';
  readonly side?: string;
}

/** All services of a shell: half-nodes, runs and sources as vertices. */
export interface ServiceGraph {
  readonly vertices: readonly Vertex[];
  readonly edges: readonly Edge[];
  readonly links: readonly Link[];
  readonly choices: readonly OpenChoice[];
  /** Vertices where a source gives out, before its own leads: source node id → vertex. */
  readonly sources: ReadonlyMap<string, number>;
  /** Every vertex of a node, its sides each; a source itself is not among them. */
  readonly ofNode: ReadonlyMap<string, readonly number[]>;
  readonly ofRun: ReadonlyMap<string, number>;
  /** What the record does not say, by node. */
  readonly unknown: ReadonlyMap<string, Unknown>;
}

/** Kinds of protection that part a circuit. */
const PARTING_PROTECTION: readonly string[] = ['fuse', 'breaker'];

/** Every service of a shell as one graph. Runs that name a node which is not recorded end there. */
export function serviceGraph(facts: ServiceFacts): ServiceGraph {
  const build = new Builder(facts);
  for (const node of facts.nodes) build.addNode(node);
  for (const run of facts.runs) build.addRun(run.id);
  for (const node of facts.nodes) build.joinRuns(node);
  for (const node of facts.nodes) build.addDrive(node);
  return build;
}

class Builder implements ServiceGraph {
  readonly vertices: Vertex[] = [];
  readonly edges: Edge[] = [];
  readonly links: Link[] = [];
  readonly choices: OpenChoice[] = [];
  readonly sources = new Map<string, number>();
  readonly ofNode = new Map<string, number[]>();
  readonly ofRun = new Map<string, number>();
  readonly unknown = new Map<string, Unknown>();
  private readonly ends: ReadonlyMap<string, readonly RunEnd[]>;
  private readonly circuits: ReadonlyMap<string, CircuitFacts>;
  private readonly half = new Map<string, ReadonlyMap<string, number>>();
  private readonly sides = new Map<string, NodeSides>();

  constructor(private readonly facts: ServiceFacts) {
    this.ends = endsByNode(facts.runs);
    this.circuits = new Map(facts.circuits.map((circuit) => [circuit.id, circuit]));
  }

  addNode(node: NodeFacts): void {
    const behaviour = behaviourOf(node);
    const sides = sidesOf(node, behaviour, behaviour.sides.length === 0 ? [] : (this.ends.get(node.id) ?? []));
    this.sides.set(node.id, sides);
    if (sides.unknown) this.unknown.set(node.id, sides.unknown);
    if (behaviour.sides.length === 0) this.addPlain(node, behaviour);
    else this.addSided(node, behaviour, sides);
  }

  addRun(id: string): void {
    this.ofRun.set(id, this.vertex({ id, of: 'run' }));
  }

  /** Joins each run that ends at a node to it, through the circuit's own fuse or breaker where that sits here. */
  joinRuns(node: NodeFacts): void {
    const protections = new Map<string, number>();
    for (const end of this.ends.get(node.id) ?? []) {
      const run = this.ofRun.get(end.run.id) as number;
      for (const { vertex, when } of this.landings(node, end)) {
        const through = this.isProtectedAt(node, end) ? `${end.run.circuit} ${vertex}` : undefined;
        if (through === undefined) this.edges.push({ from: vertex, to: run, ...when });
        else {
          const known = protections.get(through) ?? this.addProtection(node, end.run.circuit as string, vertex);
          protections.set(through, known);
          this.edges.push({ from: known, to: run, ...when });
        }
      }
    }
  }

  /** A pump or compressor gives out at its out side while any wire of its equipment is live. */
  addDrive(node: NodeFacts): void {
    if (behaviourOf(node).way !== 'drives') return;
    const out = this.half.get(node.id)?.get('out') as number;
    const own = new Set(node.of ?? []);
    const wires = this.facts.nodes.filter((other) => isElectric(other.medium) && other.of?.some((id) => own.has(id)));
    for (const wire of wires)
      for (const from of this.ofNode.get(wire.id) ?? []) this.edges.push({ from, to: out, oneWay: true, drive: true });
    if (wires.length > 0) return;
    // Nobody knows what stops it: it may run at any time.
    const core = this.vertex({ id: node.id, of: 'source' });
    this.sources.set(node.id, core);
    this.edges.push({ from: core, to: out, oneWay: true });
    this.unknown.set(node.id, {
      id: node.id,
      what: 'what supplies it is not recorded: give it and the node of its wires the same `of`',
    });
  }

  private addPlain(node: NodeFacts, { way }: Behaviour): void {
    const at = this.vertex({ id: node.id, of: 'node' });
    this.ofNode.set(node.id, [at]);
    if (way === 'unknown')
      this.unknown.set(node.id, { id: node.id, what: `what it does to its line is not recorded: type its \`role\`` });
    if (way !== 'source') return;
    const core = this.vertex({ id: node.id, of: 'source' });
    this.sources.set(node.id, core);
    this.edges.push({ from: core, to: at, oneWay: true, link: this.link({ id: node.id, of: 'source' }) });
  }

  private addSided(node: NodeFacts, behaviour: Behaviour, { known }: NodeSides): void {
    const supplies = behaviour.way === 'changeover' ? suppliesOf(known.values()) : [];
    const at = new Map(
      [...behaviour.sides, ...supplies].map((side) => [side, this.vertex({ id: node.id, of: 'node', side })] as const),
    );
    this.half.set(node.id, at);
    this.ofNode.set(node.id, [...at.values()]);
    const [a, b] = behaviour.sides.map((side) => at.get(side) as number);
    if (behaviour.way === 'parts') {
      this.edges.push({ from: a as number, to: b as number, link: this.link({ id: node.id, of: 'node' }) });
    } else if (behaviour.way === 'changeover') {
      const choice = this.choices.push({ id: node.id, states: Math.max(1, supplies.length) }) - 1;
      supplies.forEach((supply, is) => {
        this.edges.push({ from: at.get(supply) as number, to: a as number, when: { choice, is } });
      });
    } else if (behaviour.way === 'inverter charger') {
      const [acIn, acOut, dc] = [at.get('ac in'), at.get('ac out'), at.get('dc')] as [number, number, number];
      for (const [from, to] of [
        [acIn, dc],
        [acIn, acOut],
        [dc, acOut],
      ] as const)
        this.edges.push({ from, to, oneWay: true });
    } else this.edges.push({ from: a as number, to: b as number, oneWay: true });
  }

  /** Where a run end lands: on its side; where that is open, on any. */
  private landings(node: NodeFacts, end: RunEnd): readonly { readonly vertex: number; readonly when?: Pick<Edge, 'when'> }[] {
    const at = this.half.get(node.id);
    if (!at) return [{ vertex: (this.ofNode.get(node.id) as number[])[0] as number }];
    const side = this.sides.get(node.id)?.known.get(end);
    if (side !== undefined) return [{ vertex: at.get(side) as number }];
    const choice = this.choices.push({ id: node.id, states: at.size }) - 1;
    return [...at.values()].map((vertex, is) => ({ vertex, when: { when: { choice, is } } }));
  }

  private isProtectedAt(node: NodeFacts, { run }: RunEnd): boolean {
    if (node.role === 'fuse' || node.role === 'breaker' || run.circuit === undefined) return false;
    const circuit = this.circuits.get(run.circuit);
    return (
      circuit !== undefined &&
      (isElectric(circuit.medium) || circuit.medium === 'data') &&
      circuit.protection?.at === node.id &&
      PARTING_PROTECTION.includes(circuit.protection.kind)
    );
  }

  private addProtection(node: NodeFacts, circuit: string, to: number): number {
    const at = this.vertex({ id: node.id, of: 'protection' });
    this.edges.push({ from: to, to: at, link: this.link({ id: node.id, circuit, of: 'protection' }) });
    return at;
  }

  private vertex(vertex: Vertex): number {
    return this.vertices.push(vertex) - 1;
  }

  /** The same fuse, breaker or switch is one link wherever it acts. */
  private link(link: Link): number {
    const known = this.links.findIndex((one) => one.id === link.id && one.circuit === link.circuit && one.of === link.of);
    return known >= 0 ? known : this.links.push(link) - 1;
  }
}

/** The supplies that a changeover's runs name, in their order; two where fewer are named. */
function suppliesOf(sides: Iterable<string>): readonly string[] {
  const named = [...new Set(sides)].filter((side) => side !== 'load');
  for (let i = 1; named.length < 2; i++) if (!named.includes(`supply ${i}`)) named.push(`supply ${i}`);
  return named.sort((a, b) => Number(a.slice(7)) - Number(b.slice(7)));
}
