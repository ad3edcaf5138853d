import type { NodeKind, ServiceNode } from '../../records/index.js';
import type { Case } from '../rule.js';

/** What someone must one day get a hand on: to remake, shut, switch, drain or measure. */
const TO_BE_REACHED: readonly NodeKind[] = [
  'splice',
  'valve',
  'junction',
  'connector',
  'terminal',
  'drain',
  'device',
  'panel',
  'test-point',
];

/** A gas fitting is a joint that may leak. */
const needsAccess = ({ nodeKind, medium }: ServiceNode): boolean =>
  TO_BE_REACHED.includes(nodeKind) || (nodeKind === 'fitting' && medium === 'gas');

type Access = Case['figures']['access']['nodes'][number];

/** Nodes that must be reached and stand concealed, each with its figures. */
export function concealedNodes({ model, figures }: Case): readonly (readonly [ServiceNode, Access])[] {
  const found = new Map(figures.access.nodes.map((node) => [node.id, node] as const));
  return model.shell.nodes.flatMap((node) => {
    const access = found.get(node.id);
    return access && access.placed !== false && !access.open && needsAccess(node) ? [[node, access] as const] : [];
  });
}

/** `splice DC-12/S1` */
export const named = (node: ServiceNode): string => `${node.nodeKind} ${node.id}`;
