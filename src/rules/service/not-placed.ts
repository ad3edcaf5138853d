import { isPlaced } from '../../model/placed.js';
import type { Rule } from '../rule.js';

/** Ids named in the message; the others are counted. */
const MOST_NAMED = 8;

export const notPlaced: Rule = {
  name: 'service.not-placed',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'Nodes without `at`, as a wire list gives them before anyone measures: one finding per service.',
  why: 'Nobody can find it, no answer about reach, drilling or length has it in it, and its wires count without their length.',
  source: 'common practice, no source',
  examples: {
    given: `
# services/dc.yaml
service: Lights
medium: dc
nodes:
`,
    fails: `
  - {id: S1, kind: splice}
`,
    passes: `
  - {id: S1, kind: splice, at: [1 m, 0 m, 1 m]}
`,
  },
  check({ model: { shell } }) {
    return shell.services.flatMap((service) => {
      const lost = service.nodes.filter((node) => !isPlaced(node) && node.planned !== true);
      const [first] = lost;
      if (!first) return [];
      const named = lost.slice(0, MOST_NAMED).map(({ id }) => id);
      const more = lost.length > named.length ? ` and ${lost.length - named.length} more` : '';
      const [nodes, have, theirs] = lost.length === 1 ? ['node', 'has', 'its place'] : ['nodes', 'have', 'their places'];
      return [
        {
          message: `${lost.length} ${nodes} of ${service.name} ${have} no recorded place: ${named.join(', ')}${more}; expected ${theirs}: add \`at: [x, y, z]\``,
          ids: lost.map(({ id }) => id),
          place: first.source.place(),
        },
      ];
    });
  },
};
