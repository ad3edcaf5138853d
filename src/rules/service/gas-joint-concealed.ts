import type { NodeKind } from '../../records/index.js';
import type { Rule } from '../rule.js';

const JOINTS: readonly NodeKind[] = ['splice', 'connector', 'junction', 'fitting', 'valve', 'terminal', 'test-point'];

export const gasJointConcealed: Rule = {
  name: 'service.gas-joint-concealed',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A joint of a gas line in a concealed place.',
  why: 'It leaks where nobody smells it, into a closed space.',
  source: 'state liquefied-gas vehicle rules and NFPA 1192, unverified citation; a licensed gas fitter decides',
  examples: {
    given: `
# zones.yaml
- {id: TC, box: [[0 m, -0.5 m, 0 m], [3 m, 0.5 m, 0.5 m]]}
# services/gas.yaml
service: Propane
medium: gas
circuits: [{id: G}]
runs:
  - {id: GAS/1, circuit: G, from: G1, to: J, size: 1/2 in copper, tolerance: 10 mm}
  - {id: GAS/2, circuit: G, from: J, to: G2, size: 1/2 in copper, tolerance: 10 mm}
nodes:
  - {id: G1, kind: source, at: [-1 m, 0 m, 0.2 m], tolerance: 10 mm}
  - {id: G2, kind: load, at: [4 m, 0 m, 1 m], tolerance: 10 mm}
`,
    fails: `
  - {id: J, kind: fitting, name: tee, at: [1 m, 0 m, 0.2 m], tolerance: 10 mm}
`,
    passes: `
  - {id: J, kind: fitting, name: tee, at: [1 m, 0 m, 1 m], tolerance: 10 mm}
`,
  },
  check({ model: { shell }, figures }) {
    const open = new Map(figures.access.nodes.map((node) => [node.id, node.open] as const));
    return shell.nodes
      .filter((node) => node.medium === 'gas' && JOINTS.includes(node.nodeKind) && open.get(node.id) === false)
      .map((node) => ({
        message: `${node.nodeKind} ${node.id} of a gas line lies in a concealed place, expected unbroken pipe there and its joints exposed: move it, or correct its place`,
        ids: [node.id],
        place: node.source.place('at'),
      }));
  },
};
