import { earthStuds } from '../../compute/services/earths.js';
import type { Rule } from '../rule.js';

export const bareEarth: Rule = {
  name: 'service.bare-earth',
  severity: 'note',
  asks: 'missing',
  duty: 'trade',
  finds: 'A ground or bonding stud with no record of what keeps its copper off the aluminium.',
  why: 'A bare copper lug eats the aluminium under it in the wet, and the earth is lost while it still looks tight.',
  source: 'MIL-STD-889 (galvanic series), unverified citation; insulator at each earth: common practice, no source',
  examples: {
    given: `
# services/dc.yaml
service: House
medium: dc
circuits: [{id: EB, bonding: yes}]
runs: [{id: EB/1, circuit: EB, from: CMP, to: EB-1}]
nodes:
  - {id: CMP, kind: load, at: [1 m, 0 m, 1 m]}
`,
    fails: `
  - {id: EB-1, kind: terminal, name: earth stud, at: [0 m, 0 m, 1 m]}
`,
    passes: `
  - {id: EB-1, kind: terminal, name: earth stud, at: [0 m, 0 m, 1 m], insulator: yes}
`,
  },
  check({ model: { shell } }) {
    return earthStuds(shell)
      .filter((node) => node.insulator !== true)
      .map((node) => ({
        message: `${node.id} (${node.name}) has no record of what keeps its copper lug off the aluminium, expected a tinned lug or a stainless washer: look, and add \`insulator: yes\``,
        ids: [node.id],
        place: node.source.place('insulator'),
        proposes: [{ kind: 'node', id: node.id, path: ['insulator'], value: 'yes' }],
      }));
  },
};
