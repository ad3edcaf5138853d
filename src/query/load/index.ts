import type { Computed } from '../../compute/figures.js';
import { onceEach } from '../../compute/lazy-value.js';
import { ampacityA, terminalLimitA } from '../../compute/services/ampacity.js';
import { statedA, waysToSources } from '../../compute/services/feeder.js';
import { wireOf } from '../../compute/services/wire.js';
import { polylineLength } from '../../geometry/vector.js';
import type { Circuit, Run, ServiceNode } from '../../records/index.js';
import type { Unknown } from '../isolate/types.js';

/** Something that carries the load, and what it may carry. */
export interface CarriedLoad {
  readonly id: string;
  /** A without and with what is added. */
  readonly loadA: number;
  readonly withA: number;
  readonly limitA?: number;
  readonly over: boolean;
}

export interface LoadAnswer {
  readonly outlet: string;
  readonly addedA: number;
  readonly addedW: number;
  readonly voltageV: number;
  readonly circuit: CarriedLoad & {
    readonly protectionAt?: string;
    readonly ampacityA?: number;
    /** What else is on it, A each. */
    readonly others: readonly { readonly id: string; readonly loadA: number }[];
    /** The most at the moment when the worst of them starts, A. */
    readonly startA?: number;
  };
  /** Feeders between the circuit and the sources, each by the lesser of its fuse or breaker and its wire. */
  readonly feeders: readonly CarriedLoad[];
  /** Wires without a circuit of their own on the way, as links of a busbar, by what they may carry. */
  readonly links: readonly CarriedLoad[];
  readonly panels: readonly (CarriedLoad & { readonly spare: readonly string[] })[];
  readonly supplies: readonly CarriedLoad[];
  readonly over: boolean;
  readonly unknown: readonly Unknown[];
  readonly notes: readonly string[];
}

/** What is added: amperes, or watts at the circuit’s voltage. */
export type Added = { readonly a: number } | { readonly w: number };

/**
 * What a circuit, its panel and each supply carry with something plugged in at an outlet. Undefined where the id is no node on a DC or
 * AC circuit with a voltage.
 */
export function outletLoad(assessment: Computed, outlet: string, added: Added): LoadAnswer | undefined {
  const look = lookUps(assessment);
  const circuit = look.circuitAt(outlet);
  const voltageV = circuit?.voltageV;
  if (!circuit || voltageV === undefined) return undefined;
  const addedA = 'a' in added ? added.a : added.w / voltageV;
  const own = ownCircuit(circuit, addedA, look);
  const ways = look.ways(circuit);
  const feeders = new Map<string, CarriedLoad>();
  const links = new Map<string, CarriedLoad>();
  const panels = new Map<string, LoadAnswer['panels'][number]>();
  const supplies = new Map<string, CarriedLoad>();
  for (const { source, runs } of ways) {
    runs.forEach((one, i) => {
      const feeder = one.circuit === undefined ? undefined : look.circuits.get(one.circuit);
      if (feeder) feeders.set(feeder.id, carried(feeder.id, look.feederA(feeder), addedA, look.limitOf(feeder)));
      else {
        const link = carried(one.id, i === 0 ? own.loadA : look.onwardA(runs.slice(i), own.loadA), addedA, look.ampacityOf(one));
        // Behind a changeover the worse of its supplies counts.
        if (link.loadA >= (links.get(one.id)?.loadA ?? 0)) links.set(one.id, link);
      }
      for (const end of [one.from, one.to]) {
        const node = look.nodes.get(end);
        if (node?.nodeKind !== 'panel' || panels.has(end)) continue;
        const connected = look.connectedA(end);
        panels.set(end, { ...carried(end, connected, addedA, amperes(node)), spare: spareSpaces(node) });
      }
    });
    const last = [...runs].reverse().find((one) => one.circuit !== undefined);
    const by = last?.circuit === undefined ? undefined : look.circuits.get(last.circuit);
    const node = look.nodes.get(source) as ServiceNode;
    const limit = least([by?.protection?.ratingA, amperes(node)]);
    supplies.set(source, carried(source, by ? look.feederA(by) : look.connectedA(source), addedA, limit));
  }
  const all = [own, ...links.values(), ...feeders.values(), ...panels.values(), ...supplies.values()];
  const unknown = missing(own, [...supplies.values()], ways.length);
  return {
    outlet,
    addedA,
    addedW: addedA * voltageV,
    voltageV,
    circuit: own,
    feeders: [...feeders.values()],
    links: [...links.values()],
    panels: [...panels.values()],
    supplies: [...supplies.values()],
    over: all.some((one) => one.over),
    unknown,
    notes: NOTES,
  };
}

const NOTES: readonly string[] = [
  'Recorded loads, all on at once; of a feeder and a supply the load that its own record states, which may count on not all being on. A load that stays on for three hours and more may take 80 % of its breaker: NEC 210.20(A), unverified citation.',
  'Judged: fuse or breaker and wire of the circuit, links, feeders, panels and supplies with a recorded rating. Not judged: what a motor draws while it starts against the breaker, volts lost (`where` tells them), heat in a full panel.',
  'From the records only: what is plugged in elsewhere counts where it is recorded. A licensed electrician decides.',
];

const EPSILON = 1e-9;

const carried = (id: string, loadA: number, addedA: number, limitA: number | undefined): CarriedLoad => ({
  id,
  loadA,
  withA: loadA + addedA,
  ...(limitA === undefined ? {} : { limitA }),
  over: limitA !== undefined && loadA + addedA > limitA + EPSILON,
});

const amperes = ({ rating }: ServiceNode): number | undefined => (rating?.dimension === 'current' ? rating.value : undefined);

const least = (some: readonly (number | undefined)[]): number | undefined => {
  const known = some.filter((one): one is number => one !== undefined);
  return known.length > 0 ? known.reduce((low, one) => Math.min(low, one), Infinity) : undefined;
};

/** `row 7, number 14`. */
export const spareSpaces = ({ spaces = [] }: Pick<ServiceNode, 'spaces'>): readonly string[] =>
  spaces
    .filter(({ spare }) => spare)
    .map(({ row, number }) => (row === undefined ? `number ${number}` : `row ${row}, number ${number}`));

type LookUps = ReturnType<typeof lookUps>;

function ownCircuit(circuit: Circuit, addedA: number, look: LookUps): LoadAnswer['circuit'] {
  const others = look.loadsOn(circuit);
  const summed = others.reduce((sum, one) => sum + one.loadA, 0);
  const loadA = others.length > 0 ? summed : (statedA(circuit) ?? 0);
  const figure = look.figures.get(circuit.id);
  const limit = least([circuit.protection?.ratingA, figure?.ampacityA]);
  const startA = look.startOf(circuit);
  return {
    ...carried(circuit.id, loadA, addedA, limit),
    ...(circuit.protection?.at === undefined ? {} : { protectionAt: circuit.protection.at }),
    ...(figure?.ampacityA === undefined ? {} : { ampacityA: figure.ampacityA }),
    others,
    ...(startA === undefined ? {} : { startA: loadA + addedA + startA }),
  };
}

function missing(own: LoadAnswer['circuit'], supplies: readonly CarriedLoad[], ways: number): readonly Unknown[] {
  return [
    ...(own.limitA === undefined
      ? [{ id: own.id, what: 'neither its fuse or breaker nor its wire is recorded: record them' }]
      : []),
    ...(ways === 0 ? [{ id: own.id, what: 'no source is joined to it: record the wires that feed it' }] : []),
    ...supplies.flatMap(({ id, limitA }) =>
      limitA === undefined ? [{ id, what: 'what it can give is not recorded: type its `rating`, or the breaker after it' }] : [],
    ),
  ];
}

const lookUps = onceEach(({ model: { shell, library }, figures }: Computed) => {
  const nodes = new Map(shell.nodes.map((node) => [node.id, node] as const));
  const circuits = new Map(shell.circuits.map((circuit) => [circuit.id, circuit] as const));
  const lengths = new Map(figures.takeOff.runs.map((run) => [run.id, run.lengthMm] as const));
  const lengthMm = (run: Run): number => lengths.get(run.id) ?? polylineLength(run.path);
  const figureOf = new Map(figures.services.circuits.map((one) => [one.id, one] as const));
  const at = new Map<string, string>();
  for (const run of shell.runs)
    if (run.circuit !== undefined) for (const end of [run.from, run.to]) if (!at.has(end)) at.set(end, run.circuit);
  /** The lesser of its ends; of AC 60 °C where neither is recorded, NEC 110.14(C)(1), unverified citation. */
  const terminalsOf = ({ from, to, medium }: Run): number | undefined =>
    least([nodes.get(from)?.terminalsC, nodes.get(to)?.terminalsC]) ?? (medium === 'ac' ? 60 : undefined);
  const ways = onceEach((circuit: Circuit) => {
    const root = figureOf.get(circuit.id)?.root;
    return root === undefined ? [] : waysToSources(circuit, root, { nodes, runs: shell.runs, lengthMm });
  });
  const loadsOn = (circuit: Circuit) =>
    (figureOf.get(circuit.id)?.loads ?? []).map(({ node, currentA }) => ({ id: node, loadA: currentA }));
  const ownA = (circuit: Circuit): number => figureOf.get(circuit.id)?.loadA ?? statedA(circuit) ?? 0;
  /** Circuits that some place feeds, over whatever wires. */
  const behind = (place: string): readonly Circuit[] =>
    shell.circuits.filter(
      (circuit) =>
        ['dc', 'ac'].includes(circuit.medium) &&
        ways(circuit).some(({ runs }) => runs.some(({ from, to }) => from === place || to === place)),
    );
  return {
    nodes,
    circuits,
    /** What a feeder may carry: the lesser of its fuse or breaker and its wire, A. */
    limitOf: ({ id, protection }: Circuit): number | undefined => least([protection?.ratingA, figureOf.get(id)?.ampacityA]),
    /** What a wire without a circuit may carry alone, A: no more than its terminals, NEC 110.14(C). */
    ampacityOf(run: Run): number | undefined {
      const wire = wireOf(run.conductor, library);
      const carries = wire && ampacityA(wire);
      return wire && carries !== undefined ? Math.min(carries, terminalLimitA(wire, terminalsOf(run))) : undefined;
    },
    /** What such a wire carries behind the first: what the next feeder towards the source does, A. */
    onwardA(onward: readonly Run[], ownLoadA: number): number {
      const next = circuits.get(onward.find((one) => one.circuit !== undefined)?.circuit ?? '');
      return next ? Math.max(ownLoadA, statedA(next) ?? ownA(next)) : ownLoadA;
    },
    figures: figureOf,
    ways,
    loadsOn,
    circuitAt(id: string): Circuit | undefined {
      const circuit = circuits.get(nodes.get(id)?.circuit ?? at.get(id) ?? '');
      return nodes.has(id) && circuit && ['dc', 'ac'].includes(circuit.medium) ? circuit : undefined;
    },
    connectedA: (place: string): number => behind(place).reduce((sum, circuit) => sum + ownA(circuit), 0),
    /** What a feeder carries by its own record; else all that hangs on it. */
    feederA: (circuit: Circuit): number => statedA(circuit) ?? ownA(circuit),
    /** What the worst starter on a circuit draws over its own load while it starts, A. */
    startOf(circuit: Circuit): number | undefined {
      const more = loadsOn(circuit).flatMap(({ id, loadA }) => {
        const node = nodes.get(id);
        const start = node?.startLoadA ?? (node?.startLoadW && circuit.voltageV ? node.startLoadW / circuit.voltageV : undefined);
        return start === undefined ? [] : [Math.max(0, start - loadA)];
      });
      return more.length > 0 ? more.reduce((most, one) => Math.max(most, one), 0) : undefined;
    },
  };
});
