import { isClear } from '../../compute/access/sight.js';
import type { Computed } from '../../compute/figures.js';
import { onceEach } from '../../compute/lazy-value.js';
import { isPlanned } from '../../model/planned.js';
import type { Medium, Run, ServiceNode } from '../../records/index.js';
import { placesOf } from '../place.js';
import { costOfHandling, type Handling, handlingOf, sayAt } from './actions.js';
import type { Link } from './graph/graph.js';
import type { DeadTargets } from './graph/solve.js';
import type { IsolationAction } from './types.js';

export type Surroundings = ReturnType<typeof surroundings>;

/** What an answer about one shell looks up: nodes, their reach, what a hand does where. */
export const surroundings = onceEach(({ model, figures }: Computed) => {
  const { shell } = model;
  const places = placesOf(model);
  const nodes = new Map(shell.nodes.map((node) => [node.id, node] as const));
  const runs = new Map(shell.runs.map((run) => [run.id, run] as const));
  const runsAt = new Map<string, Run[]>();
  for (const run of shell.runs)
    for (const end of [run.from, run.to]) {
      const here = runsAt.get(end);
      if (here) here.push(run);
      else runsAt.set(end, [run]);
    }
  const circuits = new Map(shell.circuits.map((circuit) => [circuit.id, circuit] as const));
  const access = new Map(figures.access.nodes.map((node) => [node.id, node] as const));
  const handling = (link: Link): Handling =>
    handlingOf(
      link,
      nodes.get(link.id) as ServiceNode,
      link.circuit === undefined ? undefined : circuits.get(link.circuit)?.protection?.kind,
    );
  const panelsTo = (id: string): readonly string[] => {
    const found = access.get(id);
    if (!found || found.open) return [];
    return found.panels.filter(isClear).map((one) => one.panel);
  };
  const placed = (id: string): Pick<IsolationAction, 'place' | 'panels'> => {
    const place = places(id);
    return { ...(place === undefined ? {} : { place }), panels: panelsTo(id) };
  };
  return {
    shell,
    nodes,
    runs,
    placed,
    /** Of two ways with as many actions, the one without a panel to take off and without plugs to pull is the easier. */
    costOf(link: Link): number {
      const found = access.get(link.id);
      const shut = found?.open ? 0 : found?.inReach ? 50 : 300;
      const planned = isPlanned(shell, link.id) || (link.circuit !== undefined && isPlanned(shell, link.circuit));
      return costOfHandling(handling(link), (nodes.get(link.id) as ServiceNode).medium, { access: shut, planned });
    },
    sourceStep(link: Link): IsolationAction {
      const { kind, action, say } = handling(link);
      return {
        id: link.id,
        kind,
        action,
        say: sayAt(say, link.id),
        step: 'source',
        ...(link.of === 'source' ? { lines: linesAt(link.id, shell.runs) } : {}),
        ...(link.circuit === undefined ? {} : { circuit: link.circuit }),
        ...placed(link.id),
      };
    },
    /** Of the targets, and of the runs that end at them: a charger stands in one service and feeds another. */
    mediaOf({ nodes: ids, runs: ofRuns }: DeadTargets): readonly Medium[] {
      const beside = ids.flatMap((id) => runsAt.get(id) ?? []).map((run) => run.medium);
      const media = [...ids.map((id) => nodes.get(id)?.medium), ...ofRuns.map((id) => runs.get(id)?.medium), ...beside];
      return [...new Set(media.filter((one): one is Medium => one !== undefined))];
    },
  };
});

const linesAt = (id: string, runs: readonly { readonly id: string; readonly from: string; readonly to: string }[]) =>
  runs.filter((run) => run.from === id || run.to === id).map((run) => run.id);
