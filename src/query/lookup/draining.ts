import type { Computed } from '../../compute/figures.js';
import type { TrappedWater } from '../../compute/services/types.js';
import { hasWay } from '../../model/placed.js';
import type { ServiceNode, Shell, Tank } from '../../records/index.js';
import { behaviourOf } from '../isolate/graph/behaviour.js';
import { solve } from '../isolate/graph/solve.js';

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

const isHeater = ({ role }: ServiceNode): boolean => role === 'heater';
const isPump = ({ role }: ServiceNode): boolean => role === 'pump';
const highestFirst = (a: ServiceNode, b: ServiceNode): number => heightMm(b) - heightMm(a);
/** One without a place comes last. */
const heightMm = ({ at }: ServiceNode): number => at?.[2] ?? Number.NEGATIVE_INFINITY;

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
  const heaters = oncePerThing(of('water', isHeater));
  const steps: readonly DrainStep[] = [
    ...heaters.map(({ id }) => step('switch off', id, 'let the hot water cool first; dry it burns out')),
    ...of('water', isPump).map(({ id }) => step('switch off', id, 'the pump must not run against open taps')),
    ...[...supply].map((id) => step('shut', id, 'stops the supply')),
    ...of('water', kind('load')).map(({ id }) => step('open', id, 'lets air in')),
    ...of('water', (node) => kind('valve')(node) && node.position === 'normally closed' && !supply.has(node.id)).map(({ id }) =>
      step('open', id, 'so that the line behind it empties'),
    ),
    ...of('water', kind('drain')).map(({ id }) => ({ ...step('drain', id, 'leave it open'), litres: litres.get(id) ?? 0 })),
    ...heaters.map(({ id }) => step('drain', id, 'by its own drain, as its maker says')),
    ...of('water', isPump).map(({ id }) => step('run', id, 'a few seconds, until it only brings air')),
    ...[...supply].flatMap((id) => emptied(id, shell)),
    ...of('drain', (node) => kind('valve')(node) || kind('drain')(node)).map(({ id }) => ({
      ...step(shell.nodes.find((node) => node.id === id)?.nodeKind === 'drain' ? 'drain' : 'open', id, 'waste, last'),
      ...litresAt(id, litres, shell),
    })),
  ];
  const kept = figures.services.trapped;
  const lost = shell.runs.filter((run) => ['water', 'drain'].includes(run.medium) && !hasWay(run)).length;
  return { steps, kept, notes: notes(steps, kept, lost) };
}

const step = (does: DrainStep['do'], id: string, why: string): DrainStep => ({ do: does, id, why });

/** The valves that part every supply from the drains and taps: the fewest. */
function supplyValves(shell: Shell): readonly string[] {
  const isWater = ({ medium }: { readonly medium: string }): boolean => medium === 'water';
  const nodes = shell.nodes.filter(isWater);
  const ends = nodes.filter((node) => node.nodeKind === 'drain' || behaviourOf(node).way === 'end');
  const water = { nodes, runs: shell.runs.filter(isWater), circuits: [] };
  const { links } = solve(water, { nodes: ends.map((node) => node.id), runs: [] }, ({ of }) => (of === 'source' ? 1000 : 1));
  return links.filter(({ of }) => of === 'node').map(({ id }) => id);
}

/** A heater joined to cold and to hot water is one heater. */
const oncePerThing = (nodes: readonly ServiceNode[]): readonly ServiceNode[] => [
  ...new Map(nodes.map((node) => [node.of?.join() ?? node.id, node] as const)).values(),
];

/** With the lines empty, the tank behind a shut valve runs out by the same drains. */
function emptied(valve: string, shell: Shell): readonly DrainStep[] {
  const beyond = shell.runs.flatMap((run) => (run.from === valve ? [run.to] : run.to === valve ? [run.from] : []));
  const tank = tankAt(beyond, shell);
  if (!tank) return [];
  const why = `only where ${tank.id} may freeze too: it runs out by the open drains`;
  return [{ ...step('open', valve, why), litres: tank.capacityM3 * 1000 }];
}

/** What comes out of a waste valve or drain: the water of its pipes, and the tank that empties through it. */
function litresAt(id: string, litres: ReadonlyMap<string, number>, shell: Shell): Pick<DrainStep, 'litres'> {
  if (shell.nodes.find((node) => node.id === id)?.nodeKind !== 'drain') return {};
  const tank = tankAt([...above(id, shell)], shell);
  const all = (litres.get(id) ?? 0) + (tank ? tank.capacityM3 * 1000 : 0);
  return all > 0 ? { litres: all } : {};
}

/** The tank whose outlet is among some nodes. */
function tankAt(ids: readonly string[], { nodes, tanks }: Shell): Tank | undefined {
  const outlets = nodes.filter((node) => node.role === 'tank' && ids.includes(node.id));
  return tanks.find((tank) => outlets.some((node) => node.of?.includes(tank.id)));
}

/** Nodes that a drain hangs together with, up to the tanks. */
function above(id: string, { runs, nodes }: Shell): ReadonlySet<string> {
  const tanks = new Set(nodes.filter((node) => node.role === 'tank').map((node) => node.id));
  const seen = new Set([id]);
  for (const at of seen) {
    if (tanks.has(at)) continue;
    for (const { from, to } of runs) {
      if (from === at) seen.add(to);
      else if (to === at) seen.add(from);
    }
  }
  return seen;
}

function notes(steps: readonly DrainStep[], kept: readonly TrappedWater[], lost: number): readonly string[] {
  if (steps.length === 0) return ['No water or waste line is recorded.'];
  return [
    ...(steps.some((one) => one.do === 'drain') ? [] : ['No drain is recorded: the lines hold their water.']),
    kept.length > 0
      ? 'The low places below hold water after all this: blow them out, or fill them with potable-water antifreeze.'
      : 'After all this no recorded low place holds water.',
    ...(lost > 0 ? [`${lost} runs have no recorded way: what they hold and keep is not in these figures.`] : []),
    'From the records only: traps, toilets and appliances also hold water; see their makers’ papers.',
  ];
}
