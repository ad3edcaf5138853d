import type { Rule } from '../rule.js';

/** So much of the greater is rounding. Project default. */
const SLACK = 0.1;

export const loadDisagrees: Rule = {
  name: 'service.load-disagrees',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A circuit whose own load and the loads of its nodes differ by more than a tenth, amperes and watts brought together by its voltage.',
  why: 'Voltage drop, fuse and supply are worked out from one of the two, and nobody knows which is right.',
  source: 'P = U I; slack of a tenth: common practice, no source',
  examples: {
    given: `
# services/dc.yaml
service: House
medium: dc
circuits: [{id: DC-1, voltage: 12 V, load: 5 A}]
runs: [{id: DC-1/1, circuit: DC-1, from: N1, to: N2}]
nodes:
  - {id: N1, kind: source, role: battery, at: [0 m, 0 m, 1 m]}
`,
    fails: `
  - {id: N2, kind: load, load: 120 W, at: [1 m, 0 m, 1 m]}
`,
    passes: `
  - {id: N2, kind: load, load: 60 W, at: [1 m, 0 m, 1 m]}
`,
  },
  check({ model: { shell } }) {
    return shell.circuits.flatMap((circuit) => {
      const { voltageV, loadA, loadW } = circuit;
      if (voltageV === undefined) return [];
      const own = loadA ?? (loadW === undefined ? undefined : loadW / voltageV);
      const of = new Set(shell.runs.flatMap((run) => (run.circuit === circuit.id ? [run.from, run.to] : [])));
      const loads = shell.nodes.flatMap((node) => {
        const isOwn = node.circuit === undefined ? of.has(node.id) : node.circuit === circuit.id;
        const a = isOwn ? (node.loadA ?? (node.loadW === undefined ? undefined : node.loadW / voltageV)) : undefined;
        return a === undefined ? [] : [a];
      });
      if (own === undefined || loads.length === 0) return [];
      const sum = loads.reduce((all, one) => all + one, 0);
      if (Math.abs(sum - own) <= SLACK * Math.max(sum, own) + 0.05) return [];
      const a = (value: number): string => `${Number(value.toFixed(1))} A`;
      return [
        {
          message: `${circuit.id} has a load of ${a(own)}${loadA === undefined ? ` (${loadW} W at ${voltageV} V)` : ''}, but its nodes draw ${a(sum)} together, expected the same: correct \`load\` at one of them`,
          ids: [circuit.id],
          place: circuit.source.place('load'),
        },
      ];
    });
  },
};
