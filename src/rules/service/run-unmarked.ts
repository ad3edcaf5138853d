import { LAMP_NODES } from '../example-records.js';
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
${LAMP_NODES}
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
