import type { Rule } from '../rule.js';

export const runUnmarked: Rule = {
  name: 'service.run-unmarked',
  severity: 'note',
  asks: 'missing',
  duty: 'trade',
  finds: 'A run without a marking, of its own or of its circuit.',
  why: 'Years later the tag at the end of the wire is what a technician has in the hand.',
  source: 'common practice, no source',
  examples: {
    given: `
# services/dc.yaml
service: dc
medium: dc
circuits:
  - {id: DC-1, voltage: 12 V, load: 5 A, protection: {kind: fuse, rating: 7.5 A, at: N1}, conductor: {awg: 14}}
nodes:
  - {id: N1, kind: source, name: battery, at: [0 m, 0 m, 1 m]}
  - {id: N2, kind: load, name: lamp, at: [3 m, 0 m, 1 m]}
runs:
`,
    fails: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2}
`,
    passes: `
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, marking: DC-1}
`,
  },
  check({ model: { shell } }) {
    const marked = new Set(shell.circuits.filter((circuit) => circuit.marking !== undefined).map((circuit) => circuit.id));
    return shell.runs
      .filter((run) => run.marking === undefined && !(run.circuit !== undefined && marked.has(run.circuit)))
      .map((run) => ({
        message: `${run.id} has no marking on record, expected what its tag says: add \`marking: …\` to it or to its circuit`,
        ids: [run.id],
        place: run.source.place(),
      }));
  },
};
