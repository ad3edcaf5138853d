import { distance } from '../../geometry/vector.js';
import type { ServiceNode } from '../../model/services.js';
import type { Shell } from '../../model/shell.js';
import { isSource } from './roles.js';

/** The wires of a pump end this near to its place on the water line, mm. House value. */
const AT_PUMP_MM = 300;

/** `water pump` on the water line and `Water pump` among the wires are one thing. */
const isNamesake = (a: Pick<ServiceNode, 'name'>, b: ServiceNode): boolean =>
  a.name !== undefined && a.name.trim().toLowerCase() === b.name?.trim().toLowerCase();

/**
 * The electric nodes that drive a pump or compressor: loads, devices and terminals of DC and AC at its place, of its name, or on a
 * circuit of its name.
 */
export function electricNodesOf(driven: ServiceNode, shell: Shell): readonly string[] {
  const circuits = new Set(shell.circuits.filter((circuit) => isNamesake(circuit, driven)).map((circuit) => circuit.id));
  return shell.nodes
    .filter(
      (node) =>
        (node.medium === 'dc' || node.medium === 'ac') &&
        (node.nodeKind === 'load' || node.nodeKind === 'device' || node.nodeKind === 'terminal') &&
        !isSource(node) &&
        (distance(node.at, driven.at) <= AT_PUMP_MM ||
          isNamesake(node, driven) ||
          (node.circuit !== undefined && circuits.has(node.circuit))),
    )
    .map((node) => node.id);
}
