import type { Computed } from '../../compute/figures.js';
import type { TrappedWater } from '../../compute/services/types.js';
import type { ServiceNode } from '../../model/services.js';
import type { Shell, Tank } from '../../model/shell.js';
import { nodeKey, serviceGraph } from '../isolate/graph.js';
import { minimumCut } from '../isolate/minimum-cut.js';
import { isDriven, isSource } from '../isolate/roles.js';

/** One thing to do when the water is drained against frost. */
export interface DrainStep {
  readonly do: 'switch off' | 'shut' | 'open' | 'drain' | 'run';
  /** Node of a water or waste line. */
  readonly id: string;
  /** What it is for. */
  readonly why: string;
  /** What comes out there, L. */
  readonly litres?: number;
}

export interface DrainPlan {
  /** In the order to do them. */
  readonly steps: readonly DrainStep[];
  /** Low places that keep water after that. */
  readonly kept: readonly TrappedWater[];
  readonly notes: readonly string[];
}

const HEATER = /\b(?:heater|boiler|kettle|calorifier)\b/iu;
const highestFirst = (a: ServiceNode, b: ServiceNode): number => b.at[2] - a.at[2];

/**
 * The order of valves for draining against frost: pump and heater off, supply shut, taps open from the highest, drains open from the
 * highest to the lowest, appliances, the pump, then the tank and the waste. From the records only: valves of appliances are in
 * their makers' papers.
 */
export function drainPlan({ model: { shell }, figures }: Computed): DrainPlan {
  const litres = new Map(figures.services.drained.map((one) => [one.node, one.litres] as const));
  const of = (medium: 'water' | 'drain', keep: (node: ServiceNode) => boolean): readonly ServiceNode[] =>
    shell.nodes.filter((node) => node.medium === medium && keep(node)).sort(highestFirst);
  const kind = (wanted: ServiceNode['nodeKind']) => (node: ServiceNode) => node.nodeKind === wanted;
  const supply = new Set(supplyValves(shell));
  const heaters = oncePerThing(of('water', (node) => HEATER.test(node.name ?? '') && !isSource(node) && kind('device')(node)));
  const steps: readonly DrainStep[] = [
    ...of('water', isDriven).map(({ id }) => step('switch off', id, 'the pump must not run against open taps')),
    ...heaters.map(({ id }) => step('switch off', id, 'let the hot water cool first')),
    ...[...supply].map((id) => step('shut', id, 'stops the supply')),
    ...of('water', kind('load')).map(({ id }) => step('open', id, 'lets air in')),
    ...of('water', (node) => kind('valve')(node) && node.position === 'normally closed' && !supply.has(node.id)).map(({ id }) =>
      step('open', id, 'so that the line behind it empties'),
    ),
    ...of('water', kind('drain')).map(({ id }) => ({ ...step('drain', id, 'leave it open'), litres: litres.get(id) ?? 0 })),
    ...heaters.map(({ id }) => step('drain', id, 'by its own drain, as its maker says')),
    ...of('water', isDriven).map(({ id }) => step('run', id, 'a few seconds, until it only brings air')),
    ...[...supply].flatMap((id) => emptied(id, shell)),
    ...of('drain', (node) => kind('valve')(node) || kind('drain')(node)).map(({ id }) => ({
      ...step(shell.nodes.find((node) => node.id === id)?.nodeKind === 'drain' ? 'drain' : 'open', id, 'waste, last'),
      ...(litres.has(id) ? { litres: litres.get(id) as number } : {}),
    })),
  ];
  const kept = figures.services.trapped;
  return { steps, kept, notes: notes(steps, kept) };
}

const step = (does: DrainStep['do'], id: string, why: string): DrainStep => ({ do: does, id, why });

/** The valves that part every supply from the drains and taps: the fewest. */
function supplyValves(shell: Shell): readonly string[] {
  const water = shell.nodes.filter((node) => node.medium === 'water');
  const ends = water.filter((node) => node.nodeKind === 'drain' || node.nodeKind === 'load');
  const sources = water.filter((node) => isSource(node) && !isDriven(node));
  const { cut } = minimumCut(
    serviceGraph(shell),
    ends.map((node) => nodeKey(node.id)),
    sources.map((node) => nodeKey(node.id)),
    () => 0,
  );
  return cut.filter((vertex) => vertex.what === 'node' && !vertex.lastResort).map((vertex) => vertex.id);
}

/** A heater joined to cold and to hot water is one heater: `HEATER/C` and `HEATER/H`. */
const oncePerThing = (nodes: readonly ServiceNode[]): readonly ServiceNode[] => [
  ...new Map(nodes.map((node) => [node.id.split('/')[0], node] as const)).values(),
];

/** With the lines empty, the tank behind a shut valve runs out by the same drains. */
function emptied(valve: string, shell: Shell): readonly DrainStep[] {
  const beyond = shell.runs.flatMap((run) => (run.from === valve ? [run.to] : run.to === valve ? [run.from] : []));
  const tank = shell.tanks.find((one: Tank) => beyond.some((id) => id.startsWith(`${one.id}/`)));
  if (!tank) return [];
  const why = `only where ${tank.id} may freeze too: it runs out by the open drains`;
  return [{ ...step('open', valve, why), litres: tank.capacityM3 * 1000 }];
}

function notes(steps: readonly DrainStep[], kept: readonly TrappedWater[]): readonly string[] {
  if (steps.length === 0) return ['No water or waste line is recorded.'];
  return [
    ...(steps.some((one) => one.do === 'drain') ? [] : ['No drain is recorded: the lines keep their water.']),
    kept.length > 0
      ? 'The low places below keep water after all this: blow them out, or fill them with frost protection for drinking water.'
      : 'No recorded low place keeps water after all this.',
    'From the records only: traps, toilets and appliances hold water of their own; see their makers’ papers.',
  ];
}
