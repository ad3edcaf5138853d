import type { Medium, NodeRole, ServiceNode, Shell } from '../../records/index.js';
import { behaviourOf } from './graph/behaviour.js';
import { shutOffs } from './graph/shut-offs.js';

/** What is shut or switched first stands first. */
export const RESCUE_GROUPS = ['Gas', 'Fuel', 'AC power', 'Batteries and direct current'] as const;
export type RescueGroup = (typeof RESCUE_GROUPS)[number];

/** Something to shut, switch off or keep away from: a node, or a tank or component that no node stands for. */
export interface RescueSource {
  readonly group: RescueGroup;
  readonly id: string;
  readonly node?: ServiceNode;
}

const MEDIA: Readonly<Record<RescueGroup, Medium>> = {
  Gas: 'gas',
  Fuel: 'fuel',
  'AC power': 'ac',
  'Batteries and direct current': 'dc',
};
/** It gives power of its own to a line while everything before it is off. */
const GIVES: readonly NodeRole[] = ['inverter', 'inverter charger'];

/**
 * Sources of what burns or kills, each with the first switches and valves on its lines, then panels. By roles, kinds, tank uses and the
 * graph; light feeds solar panels whatever is done, so they stand last.
 */
export function rescueSources(
  shell: Pick<Shell, 'nodes' | 'runs' | 'circuits' | 'tanks' | 'components'>,
): readonly RescueSource[] {
  const first = firstShutOffs(shell);
  return RESCUE_GROUPS.flatMap((group) => {
    const medium = MEDIA[group];
    const rank = (node: ServiceNode): number | undefined => {
      if (node.medium !== medium) return undefined;
      if (node.role === 'solar panel') return 4;
      if (behaviourOf(node).way === 'source' || (node.role !== undefined && GIVES.includes(node.role))) return 1;
      if (first.has(node.id) || node.role === 'switch') return node.role === 'switch' ? 1.5 : 2;
      if (node.nodeKind === 'panel') return 3;
      return medium === 'gas' && behaviourOf(node).way === 'parts' ? 3 : undefined;
    };
    const nodes = shell.nodes
      .flatMap((node, index) => {
        const of = rank(node);
        return of === undefined ? [] : [{ node, of, index }];
      })
      .sort((a, b) => a.of - b.of || a.index - b.index)
      .map(({ node }): RescueSource => ({ group, id: node.id, node }));
    const held = new Set(nodes.flatMap(({ node }) => node?.of ?? []));
    return [...nodes, ...tanksOf(shell, group).filter(({ id }) => !held.has(id))];
  });
}

function tanksOf({ tanks }: Pick<Shell, 'tanks'>, group: RescueGroup): readonly RescueSource[] {
  const use = group === 'Gas' ? 'gas' : group === 'Fuel' ? 'fuel' : undefined;
  return use === undefined ? [] : tanks.filter((tank) => tank.use === use).map(({ id }) => ({ group, id }));
}

/** The first switches, fuses and valves on the lines of any source, plugs left out. */
export function firstShutOffs(shell: Pick<Shell, 'nodes' | 'runs' | 'circuits'>): ReadonlySet<string> {
  const nodes = new Map(shell.nodes.map((node) => [node.id, node] as const));
  return new Set(
    shutOffs(shell).flatMap(({ links }) =>
      links.filter((link) => link.of === 'node' && nodes.get(link.id)?.role !== 'plug').map((link) => link.id),
    ),
  );
}

/** Equipment that a battery, generator or inverter belongs to: drawn as large as it is. */
export function powerEquipment({ nodes }: Pick<Shell, 'nodes'>): ReadonlySet<string> {
  const power: readonly (NodeRole | undefined)[] = ['battery', 'generator', 'alternator', ...GIVES];
  return new Set(nodes.filter(({ role }) => power.includes(role)).flatMap(({ of = [] }) => of));
}

/** Electronics that a welder’s current can kill: what changes or regulates power, and every appliance on its wires. */
const ELECTRONIC: readonly NodeRole[] = [
  ...(['charger', 'converter', 'inverter', 'inverter charger', 'solar regulator'] as const),
  ...(['appliance'] as const),
];

/** Nodes to unplug or disconnect before anybody welds, those that change power first. By role; nodes without one are not among them. */
export const beforeWelding = ({ nodes }: Pick<Shell, 'nodes'>): readonly ServiceNode[] =>
  nodes
    .filter(({ role, medium }) => role !== undefined && ELECTRONIC.includes(role) && ['dc', 'ac', 'data'].includes(medium))
    .map((node, index) => ({ node, index, last: node.role === 'appliance' }))
    .sort((a, b) => Number(a.last) - Number(b.last) || a.index - b.index)
    .map(({ node }) => node);
