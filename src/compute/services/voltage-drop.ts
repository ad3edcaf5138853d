import type { Circuit, Run, ServiceNode } from '../../model/services.js';
import { type Branch, type CircuitTree, wayTo } from './branches.js';
import type { LoadFigure } from './types.js';
import { conductorC, resistanceOhm, type Wire } from './wire.js';

/** A node that draws current. */
export interface Load {
  readonly node: string;
  readonly currentA: number;
}

/**
 * What a circuit feeds: the nodes whose own load is recorded; else the circuit's load in equal shares at its loads and devices,
 * or where there are none, at the open ends of its runs. `shared` tells the second case.
 */
export function loadsOf(
  circuit: Circuit,
  tree: CircuitTree,
  nodes: ReadonlyMap<string, ServiceNode>,
): { readonly loads: readonly Load[]; readonly shared: boolean } {
  const fed = [...tree.into.keys()];
  const own = fed.flatMap((id) => {
    const currentA = nodes.get(id)?.loadA;
    return currentA === undefined ? [] : [{ node: id, currentA }];
  });
  if (own.length > 0) return { loads: own, shared: false };
  const whole = circuit.loadA ?? (circuit.loadW && circuit.voltageV ? circuit.loadW / circuit.voltageV : undefined);
  if (whole === undefined) return { loads: [], shared: false };
  const users = fed.filter((id) => ['load', 'device'].includes(nodes.get(id)?.nodeKind ?? ''));
  const inner = new Set([...tree.into.values()].map((branch) => branch.from));
  const ends = users.length > 0 ? users : fed.filter((id) => !inner.has(id));
  return {
    loads: ends.map((node) => ({ node, currentA: whole / ends.length })),
    shared: ends.length > 1,
  };
}

/**
 * Voltage drop at each load, V: over every run on its way, the run's resistance there and back times all the current that the run
 * carries, V = Σ I R. Loads on whose way a conductor is not known are left out. A run of a single conductor counts one way: its
 * return is not recorded.
 */
export function loadFigures(
  circuit: Circuit,
  tree: CircuitTree,
  loads: readonly Load[],
  wireOfRun: (run: Run) => Wire | undefined,
): readonly LoadFigure[] {
  const carried = new Map<Run, number>();
  for (const load of loads) {
    for (const { run } of wayTo(load.node, tree)) carried.set(run, (carried.get(run) ?? 0) + load.currentA);
  }
  const atC = conductorC(circuit.medium);
  const drop = ({ run, lengthMm }: Branch): number => {
    const wire = wireOfRun(run);
    return wire ? (carried.get(run) as number) * wire.carrying * resistanceOhm(wire, lengthMm, atC) : Number.NaN;
  };
  return loads.flatMap((load) => {
    const way = wayTo(load.node, tree);
    const dropV = way.reduce((sum, branch) => sum + drop(branch), 0);
    if (way.length === 0 || Number.isNaN(dropV)) return [];
    const share = circuit.voltageV ? dropV / circuit.voltageV : undefined;
    return [
      {
        node: load.node,
        currentA: load.currentA,
        dropV,
        drop: share,
        runs: way.map(({ run }) => run.id),
      },
    ];
  });
}
