import type { Circuit, Run, ServiceNode } from '../../records/index.js';
import { type CircuitTree, wayTo } from './branches.js';
import { type Draw, solveNodal } from './nodal.js';
import { gives } from './supplies.js';
import type { LoadFigure } from './types.js';
import { conductorC, resistanceOhm, type Wire } from './wire.js';

/** A node that draws current: amperes, or watts at whatever voltage is left there. */
export interface CurrentLoad {
  readonly node: string;
  readonly currentA?: number;
  readonly w?: number;
}

/**
 * What a circuit feeds: the nodes whose own load is recorded; else the circuit's load in equal shares at its loads and devices,
 * or where there are none, and on a circuit that starts at a source, at the open ends of its runs. `shared` tells the second case.
 */
export function loadsOf(
  circuit: Circuit,
  tree: CircuitTree,
  nodes: ReadonlyMap<string, ServiceNode>,
): { readonly loads: readonly CurrentLoad[]; readonly shared: boolean } {
  const fed = [...tree.into.keys()];
  const own = fed.flatMap((id): readonly CurrentLoad[] => {
    const node = nodes.get(id);
    if (node?.loadA !== undefined) return [{ node: id, currentA: node.loadA }];
    return node?.loadW === undefined ? [] : [{ node: id, w: node.loadW }];
  });
  if (own.length > 0) return { loads: own, shared: false };
  const { loadA, loadW } = circuit;
  if (loadA === undefined && loadW === undefined) return { loads: [], shared: false };
  const isSupply = gives(nodes.get(tree.root), circuit.medium);
  const users = isSupply ? [] : fed.filter((id) => ['load', 'device'].includes(nodes.get(id)?.nodeKind ?? ''));
  const inner = new Set([...tree.into.values()].map((branch) => branch.from));
  const open = fed.filter((id) => !inner.has(id) && !gives(nodes.get(id), circuit.medium));
  const ends = users.length > 0 ? users : open;
  return {
    loads: ends.map((node) => ({
      node,
      ...(loadA === undefined ? { w: (loadW as number) / ends.length } : { currentA: loadA / ends.length }),
    })),
    shared: ends.length > 1,
  };
}

/**
 * Voltage drop at each load, V, by nodal analysis of the circuit’s runs, each with its resistance there and back; rings as rings. Loads
 * on whose way a conductor is not known are left out. A run of a single conductor counts one way: its return is not recorded.
 */
export function loadFigures(
  circuit: Circuit,
  runs: readonly Run[],
  tree: CircuitTree,
  loads: readonly CurrentLoad[],
  { wireOfRun, lengthMm }: { readonly wireOfRun: (run: Run) => Wire | undefined; readonly lengthMm: (run: Run) => number },
): readonly LoadFigure[] {
  const atC = conductorC(circuit.medium);
  const resistors = runs.flatMap((run) => {
    const wire = wireOfRun(run);
    return wire ? [{ from: run.from, to: run.to, ohm: wire.carrying * resistanceOhm(wire, lengthMm(run), atC) }] : [];
  });
  const { voltageV } = circuit;
  const draws = loads.flatMap(({ node, currentA, w }): readonly Draw[] => {
    if (currentA !== undefined) return [{ node, a: currentA }];
    return w !== undefined && voltageV !== undefined ? [{ node, w }] : [];
  });
  const { dropV, drawnA } = solveNodal(resistors, tree.root, draws, voltageV);
  return draws.flatMap(({ node }) => {
    const way = wayTo(node, tree);
    const lost = dropV.get(node);
    if (way.length === 0 || lost === undefined || way.some(({ run }) => wireOfRun(run) === undefined)) return [];
    return [
      {
        node,
        currentA: drawnA.get(node) as number,
        dropV: lost,
        drop: voltageV ? lost / voltageV : undefined,
        runs: way.map(({ run }) => run.id),
      },
    ];
  });
}
