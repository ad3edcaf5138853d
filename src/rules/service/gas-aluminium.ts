import type { Rule } from '../rule.js';

const ALUMINIUM = /\balumini?um\b/iu;

export const gasAluminium: Rule = {
  name: 'service.gas-aluminium',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A gas line of aluminium tube.',
  why: 'Aluminium tube cracks with vibration and corrodes where it touches wet metal.',
  source: 'state liquefied-gas vehicle rules, unverified citation; a licensed gas fitter decides',
  examples: {
    given: `
# services/gas.yaml
service: Propane
medium: gas
nodes:
  - {id: G1, kind: source, at: [0 m, 0 m, 1 m]}
  - {id: G2, kind: load, at: [3 m, 0 m, 1 m]}
runs:
`,
    fails: `
  - {id: GAS/1, from: G1, to: G2, size: 1/2 in aluminium}
`,
    passes: `
  - {id: GAS/1, from: G1, to: G2, size: 1/2 in copper}
`,
  },
  check({ model: { shell } }) {
    const circuits = new Map(shell.circuits.map((circuit) => [circuit.id, circuit] as const));
    return shell.runs.flatMap((run) => {
      const size = run.size ?? circuits.get(run.circuit ?? '')?.size;
      if (run.medium !== 'gas' || !size || !ALUMINIUM.test(size.material)) return [];
      return [
        {
          message: `${run.id} is ${size.text}, expected steel, copper or listed hose for gas: replace it, or correct \`size\``,
          ids: [run.id],
          place: run.source.place('size'),
        } as const,
      ];
    });
  },
};
