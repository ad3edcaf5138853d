import { circuitTree } from '../../compute/services/branches.js';
import { polylineLength } from '../../geometry/vector.js';
import type { Run } from '../../records/index.js';
import { LAMP_NODES } from '../example-records.js';
import type { Rule } from '../rule.js';

export const ring: Rule = {
  name: 'service.ring',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'Runs of one circuit that form a ring where a tree is expected. A note for pipes, which may be rings on purpose.',
  why: 'A load is then fed two ways: one fuse does not part it, and each wire may carry more than it was sized for.',
  source: 'common practice, no source',
  examples: {
    given: `
${LAMP_NODES}
  - {id: N3, kind: junction, at: [1.5 m, 0 m, 1.2 m]}
runs:
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N3}
  - {id: DC-1/2, circuit: DC-1, from: N3, to: N2}
`,
    fails: `
  - {id: DC-1/3, circuit: DC-1, from: N2, to: N1}
`,
    passes: `
# no third run
`,
  },
  check({ model: { shell }, figures }) {
    const roots = new Map(figures.services.circuits.map((circuit) => [circuit.id, circuit.root] as const));
    const byCircuit = new Map<string | undefined, Run[]>();
    for (const run of shell.runs) {
      const list = byCircuit.get(run.circuit);
      if (list) list.push(run);
      else byCircuit.set(run.circuit, [run]);
    }
    return shell.circuits.flatMap((circuit) => {
      const runs = (byCircuit.get(circuit.id) ?? []).filter((run) => run.from !== run.to && !run.abandoned);
      const root = roots.get(circuit.id) ?? runs[0]?.from;
      if (root === undefined || circuit.bonding) return [];
      const { closing } = circuitTree(root, runs, (run) => run.installedLengthMm ?? polylineLength(run.path));
      return closing.map((run) => ({
        severity: circuit.medium === 'dc' || circuit.medium === 'ac' ? ('warning' as const) : ('note' as const),
        message: `${run.id} from ${run.from} to ${run.to} closes a ring in ${circuit.id}, expected one way to each place: compare \`from\` and \`to\`, or the circuit that it is of`,
        ids: [run.id, circuit.id],
        place: run.source.place('to'),
      }));
    });
  },
};
