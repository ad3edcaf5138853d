import type { NodeKind } from '../../model/services.js';
import type { Rule } from '../rule.js';

const JOINTS: readonly NodeKind[] = ['splice', 'connector', 'junction', 'fitting', 'valve', 'terminal', 'test-point'];

export const gasJointConcealed: Rule = {
  name: 'service.gas-joint-concealed',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A joint of a gas line in a concealed place.',
  why: 'It leaks where nobody smells it, into a closed space.',
  source: 'state liquefied-gas vehicle rules and NFPA 1192, from memory; a licensed gas fitter decides',
  check({ model: { shell }, figures }) {
    const open = new Map(figures.access.nodes.map((node) => [node.id, node.open] as const));
    return shell.nodes
      .filter((node) => node.medium === 'gas' && JOINTS.includes(node.nodeKind) && open.get(node.id) === false)
      .map((node) => ({
        message: `${node.nodeKind} ${node.id} of a gas line lies in a concealed place, expected unbroken pipe there and its joints in the open: move it, or correct its place`,
        ids: [node.id],
        place: node.source.place('at'),
      }));
  },
};
