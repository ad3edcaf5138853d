import type { Library } from '../../model/library.js';
import type { Circuit, Run, ServiceNode } from '../../model/services.js';
import { ambientFactor, ampacityA, bundleFactor, column, nextStandardA, smallConductorA, TABLE_AMBIENT_C } from './ampacity.js';
import { type CircuitTree, circuitTree, rootOf, wayTo } from './branches.js';
import type { CircuitFigure } from './types.js';
import { loadFigures, loadsOf } from './voltage-drop.js';
import { conductorC, resistanceOhm, type Wire, wireOf } from './wire.js';

export interface CircuitSurroundings {
  readonly library: Library;
  /** Hottest air around wiring, °C, where a circuit does not say. */
  readonly ambientC?: number;
  readonly nodes: ReadonlyMap<string, ServiceNode>;
  readonly lengthMm: (run: Run) => number;
  /** Current-carrying conductors about a run, its own included, by run id. */
  readonly bundled: ReadonlyMap<string, number>;
}

/** Length of any circuit; of DC and AC circuits the drop, ampacity and protection as well. */
export function circuitFigure(circuit: Circuit, runs: readonly Run[], around: CircuitSurroundings): CircuitFigure {
  const lengthMm = runs.reduce((sum, run) => sum + around.lengthMm(run), 0);
  const root = rootOf(circuit, runs, around.nodes);
  const plain: CircuitFigure = {
    id: circuit.id,
    lengthMm,
    runs: runs.map((run) => run.id),
    root,
    loads: [],
    protectionA: circuit.protection?.ratingA,
    assumptions: [],
  };
  if ((circuit.medium !== 'dc' && circuit.medium !== 'ac') || root === undefined) return plain;
  const ambientC = circuit.ambientC ?? around.ambientC ?? TABLE_AMBIENT_C;
  const wireOfRun = (run: Run): Wire | undefined => wireOf(run.conductor ?? circuit.conductor, around.library);
  const tree = circuitTree(root, runs, around.lengthMm);
  const { loads, shared } = loadsOf(circuit, tree, around.nodes);
  const figures = loadFigures(circuit, tree, loads, wireOfRun);
  const worst = figures.reduce<(typeof figures)[number] | undefined>((a, b) => (a && a.dropV >= b.dropV ? a : b), undefined);
  return {
    ...plain,
    dropV: worst?.dropV,
    drop: worst?.drop,
    worstLoad: worst?.node,
    loads: figures,
    loadA: loads.length > 0 ? loads.reduce((sum, load) => sum + load.currentA, 0) : undefined,
    resistanceOhm: worst && resistanceTo(worst.node, tree, circuit, wireOfRun),
    ...carrying(runs, wireOfRun, { bundled: around.bundled, ambientC }),
    assumptions: assumptions(circuit, runs, tree, { shared, wireOfRun, ambientC }),
  };
}

function resistanceTo(
  node: string,
  tree: CircuitTree,
  { medium }: Circuit,
  wireOfRun: (run: Run) => Wire | undefined,
): number | undefined {
  return wayTo(node, tree).reduce<number | undefined>((sum, { run, lengthMm }) => {
    const wire = wireOfRun(run);
    return sum === undefined || !wire ? undefined : sum + wire.carrying * resistanceOhm(wire, lengthMm, conductorC(medium));
  }, 0);
}

/** The run that may carry the least rules the circuit: alone for its protection, bundled for its ampacity. */
function carrying(
  runs: readonly Run[],
  wireOfRun: (run: Run) => Wire | undefined,
  { bundled, ambientC }: { readonly bundled: ReadonlyMap<string, number>; readonly ambientC: number },
): Partial<CircuitFigure> {
  const rated = runs.flatMap((run) => {
    const wire = wireOfRun(run);
    const inTable = wire && ampacityA(wire);
    if (!wire || inTable === undefined) return [];
    const alone = inTable * ambientFactor(ambientC, column(wire.ratingC));
    const count = bundled.get(run.id) ?? wire.carrying;
    return [{ run, wire, alone, count, together: alone * bundleFactor(count) }];
  });
  const least = (key: 'alone' | 'together') =>
    rated.reduce<(typeof rated)[number] | undefined>((a, b) => (a && a[key] <= b[key] ? a : b), undefined);
  const smallest = least('alone');
  const hottest = least('together');
  if (!smallest || !hottest) return {};
  return {
    ampacityA: hottest.together,
    ampacityAloneA: smallest.alone,
    bundledConductors: hottest.count,
    protectionLimitA: smallConductorA(smallest.wire) ?? nextStandardA(smallest.alone),
    smallestRun: smallest.run.id,
    smallestConductor: smallest.wire.text,
  };
}

function assumptions(
  circuit: Circuit,
  runs: readonly Run[],
  tree: CircuitTree,
  {
    shared,
    wireOfRun,
    ambientC,
  }: {
    readonly shared: boolean;
    readonly wireOfRun: (run: Run) => Wire | undefined;
    readonly ambientC: number;
  },
): readonly string[] {
  const said: string[] = [`Conductors at ${conductorC(circuit.medium)} °C under load; ampacity in ${ambientC} °C air.`];
  const wires = runs.map(wireOfRun);
  const unknown = runs.filter((_, i) => wires[i] === undefined).map((run) => run.id);
  if (unknown.length > 0) said.push(`No conductor recorded for ${unknown.join(', ')}: no drop beyond it.`);
  if (wires.some((wire) => wire?.material === 'aluminium')) said.push('No ampacity table is held for aluminium conductors.');
  if (wires.some((wire) => wire && wire.ratedA === undefined && wire.ratingC === undefined)) {
    said.push('No temperature rating recorded: ampacity from the 60 °C column.');
  }
  if (wires.some((wire) => wire?.carrying === 1))
    said.push('A single conductor is recorded: the resistance of its return is not counted.');
  if (shared) said.push('The load of the circuit is taken in equal shares at its loads.');
  if (tree.closing.length > 0) said.push('The circuit has a ring: each load is taken as fed the shorter way.');
  if (tree.apart.length > 0) said.push(`Not joined to ${tree.root} by runs of this circuit: ${tree.apart.join(', ')}.`);
  return said;
}
