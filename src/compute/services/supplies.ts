import type { Medium, NodeRole, ServiceNode } from '../../records/index.js';

const HOLDS: readonly (NodeRole | undefined)[] = ['battery', 'generator', 'alternator', 'shore inlet'];

/** Holds the voltage of the wires behind it. A solar panel charges and holds nothing up. Without a role by its kind. */
export const isSupply = ({ role, nodeKind }: ServiceNode): boolean =>
  role === undefined ? nodeKind === 'source' : HOLDS.includes(role);

/** Gives power into a circuit of a medium: a source, a charger into direct current, an inverter into alternating. It draws none there. */
export function gives(node: ServiceNode | undefined, medium: Medium): boolean {
  if (!node) return false;
  if (isSupply(node) || node.role === 'solar panel') return true;
  return (node.role === 'charger' && medium === 'dc') || makesAc(node, medium);
}

const makesAc = ({ role }: ServiceNode, medium: Medium): boolean =>
  medium === 'ac' && (role === 'inverter' || role === 'inverter charger');

/** Holds up the voltage of a circuit of a medium: a source, and an inverter for alternating current. */
export const holdsUp = (node: ServiceNode, medium: Medium): boolean => isSupply(node) || makesAc(node, medium);
