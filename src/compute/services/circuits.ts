import type { Circuit, Library, Run, ServiceNode } from '../../records/index.js';
import {
  ambientFactor,
  ampacityA,
  bundleFactor,
  column,
  nextStandardA,
  smallConductorA,
  TABLE_AMBIENT_C,
  terminalLimitA,
} from './ampacity.js';
import { type CircuitTree, circuitTree, rootOf, wayTo } from './branches.js';
import { type Feeder, feederOf } from './feeder.js';
import type { CircuitFigure, LoadFigure } from './types.js';
import { type CurrentLoad, loadFigures, loadsOf } from './voltage-drop.js';
import { conductorC, resistanceOhm, type Wire, wireOf } from './wire.js';

export interface CircuitSurroundings {
  readonly library: Library;
  /** Hottest air around wiring, °C, where a circuit does not say. */
  readonly ambientC?: number;
  readonly nodes: ReadonlyMap<string, ServiceNode>;
  /** 0 where it is not recorded. */
  readonly lengthMm: (run: Run) => number;
  /** A run without a length or a way gives no drop. */
  readonly hasLength: (run: Run) => boolean;
  /** Current-carrying conductors about a run, its own included, by run id. */
  readonly bundled: ReadonlyMap<string, number>;
  /** Every circuit and run of the shell, for what a circuit hangs on. Without them the drop is that of the circuit’s own wires. */
  readonly all?: { readonly circuits: ReadonlyMap<string, Circuit>; readonly runs: readonly Run[] };
}

/** Length of any circuit; of DC and AC circuits the drop, ampacity and protection as well. */
export function circuitFigure(circuit: Circuit, runs: readonly Run[], around: CircuitSurroundings): CircuitFigure {
  const whole = runs.every(around.hasLength);
  const root = rootOf(circuit, runs, around.nodes);
  const plain: CircuitFigure = {
    id: circuit.id,
    ...(whole ? { lengthMm: runs.reduce((sum, run) => sum + around.lengthMm(run), 0) } : {}),
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
  const measured = (run: Run): Wire | undefined => (around.hasLength(run) ? wireOfRun(run) : undefined);
  const own = loadFigures(circuit, runs, tree, loads, { wireOfRun: measured, lengthMm: around.lengthMm });
  const loadA = loads.length > 0 ? totalA(circuit, loads) : undefined;
  const feeder = own.length > 0 ? feederBehind(circuit, root, loadA ?? 0, around) : undefined;
  const figures = own.map((one) => withFeeder(one, feeder, circuit));
  const worst = figures.reduce<(typeof figures)[number] | undefined>((a, b) => (a && a.dropV >= b.dropV ? a : b), undefined);
  return {
    ...plain,
    dropV: worst?.dropV,
    drop: worst?.drop,
    worstLoad: worst?.node,
    loads: figures,
    loadA,
    ...(feeder ? { feeder } : {}),
    resistanceOhm: worst && resistanceTo(worst.node, tree, circuit, measured),
    ...carrying(runs, wireOfRun, { bundled: around.bundled, ambientC, terminalC: terminalC(circuit, around.nodes) }),
    assumptions: [...assumptions(circuit, runs, tree, { shared, wireOfRun, ambientC, feeder }), ...withoutLength(runs, around)],
  };
}

function feederBehind(circuit: Circuit, root: string, loadA: number, around: CircuitSurroundings): Feeder | undefined {
  if (!around.all) return undefined;
  const { circuits, runs } = around.all;
  const wireOfAny = (run: Run): Wire | undefined => {
    const conductor = run.conductor ?? (run.circuit === undefined ? undefined : circuits.get(run.circuit)?.conductor);
    return around.hasLength(run) ? wireOf(conductor, around.library) : undefined;
  };
  return feederOf(circuit, root, loadA, { nodes: around.nodes, circuits, runs, lengthMm: around.lengthMm, wireOf: wireOfAny });
}

/** The whole way from the source. */
function withFeeder(load: LoadFigure, feeder: Feeder | undefined, { voltageV }: Circuit): LoadFigure {
  if (!feeder) return load;
  const dropV = load.dropV + feeder.dropV;
  return { ...load, dropV, ...(voltageV ? { drop: dropV / voltageV } : {}) };
}

/** All loads together, A; watts at the voltage of the source. */
function totalA({ voltageV }: Circuit, loads: readonly CurrentLoad[]): number | undefined {
  const each = loads.map(({ currentA, w }) => currentA ?? (w !== undefined && voltageV ? w / voltageV : undefined));
  return each.includes(undefined) ? undefined : each.reduce<number>((sum, one) => sum + (one as number), 0);
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

/**
 * The temperature of the terminals at a run’s ends, °C: the lesser recorded; for AC without a record 60 up to 100 A and 75 above, NEC
 * 110.14(C)(1), unverified citation. Undefined for low voltage without a record, which that clause does not rule.
 */
function terminalC({ medium, protection }: Circuit, nodes: ReadonlyMap<string, ServiceNode>): (run: Run) => number | undefined {
  const usual = medium === 'ac' ? ((protection?.ratingA ?? 0) > 100 ? 75 : 60) : undefined;
  return (run) => {
    const at = [run.from, run.to].flatMap((id) => nodes.get(id)?.terminalsC ?? []);
    return at.length > 0 ? at.reduce((low, one) => Math.min(low, one), Infinity) : usual;
  };
}

/** The run that may carry the least rules the circuit: alone for its protection, bundled for its ampacity. */
function carrying(
  runs: readonly Run[],
  wireOfRun: (run: Run) => Wire | undefined,
  {
    bundled,
    ambientC,
    terminalC: ofTerminals,
  }: {
    readonly bundled: ReadonlyMap<string, number>;
    readonly ambientC: number;
    readonly terminalC: (run: Run) => number | undefined;
  },
): Partial<CircuitFigure> {
  const rated = runs.flatMap((run) => {
    const wire = wireOfRun(run);
    const inTable = wire && ampacityA(wire);
    if (!wire || inTable === undefined) return [];
    // The insulation’s column, corrected; and no more than what the terminals at its ends may take: NEC 110.14(C).
    const cap = terminalLimitA(wire, ofTerminals(run));
    const alone = Math.min(cap, inTable * ambientFactor(ambientC, column(wire.ratingC)));
    const count = bundled.get(run.id) ?? wire.carrying;
    return [
      {
        run,
        wire,
        alone,
        count,
        together: Math.min(cap, inTable * ambientFactor(ambientC, column(wire.ratingC)) * bundleFactor(count)),
      },
    ];
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

function withoutLength(runs: readonly Run[], { hasLength }: CircuitSurroundings): readonly string[] {
  const lost = runs.filter((run) => !hasLength(run)).map(({ id }) => id);
  return lost.length === 0 ? [] : [`Neither length nor place of both ends recorded for ${lost.join(', ')}: no drop beyond it.`];
}

function assumptions(
  circuit: Circuit,
  runs: readonly Run[],
  tree: CircuitTree,
  {
    shared,
    wireOfRun,
    ambientC,
    feeder,
  }: {
    readonly shared: boolean;
    readonly wireOfRun: (run: Run) => Wire | undefined;
    readonly ambientC: number;
    readonly feeder: Feeder | undefined;
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
  if (feeder) said.push(`Counted from ${feeder.source}: ${feeder.dropV.toFixed(2)} V are lost before ${tree.root}.`);
  if (feeder && feeder.notCounted.length > 0)
    said.push(
      `Conductor or length not recorded on the way there: ${feeder.notCounted.join(', ')}: more is lost than is counted.`,
    );
  if (tree.closing.length > 0) said.push('The circuit has a ring: solved as one, each load fed both ways.');
  if (tree.apart.length > 0) said.push(`Not joined to ${tree.root} by runs of this circuit: ${tree.apart.join(', ')}.`);
  return said;
}
