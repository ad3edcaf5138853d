import type { ServiceNode, Shell } from '../../records/index.js';

/** Studs, bars and lugs at the ends of earth bonds (`bonding: yes`), by what they join and no word of a name. */
export function earthNodes({ nodes, runs, circuits }: Pick<Shell, 'nodes' | 'runs' | 'circuits'>): readonly ServiceNode[] {
  const bonding = new Set(circuits.filter((circuit) => circuit.bonding).map((circuit) => circuit.id));
  const ends = new Set(runs.flatMap((run) => (bonding.has(run.circuit ?? '') ? [run.from, run.to] : [])));
  return nodes.filter((node) => ends.has(node.id) && node.nodeKind !== 'panel');
}

/** Earth studs that one lug after another goes on; a bar has a screw for each. */
export const earthStuds = (shell: Pick<Shell, 'nodes' | 'runs' | 'circuits'>): readonly ServiceNode[] =>
  earthNodes(shell).filter((node) => node.nodeKind === 'terminal' && node.role !== 'busbar');
