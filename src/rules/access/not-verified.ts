import type { Rule } from '../rule.js';

export const accessNotVerified: Rule = {
  name: 'access.not-verified',
  severity: 'note',
  asks: 'missing',
  duty: 'inspector',
  finds: 'A shell with services whose record has no concealed cavity at all.',
  why: 'Every node then counts as exposed, so nothing was checked.',
  source: 'common practice, no source',
  examples: {
    given: `
# services/dc.yaml
service: Lights
medium: dc
nodes:
  - {id: S1, kind: splice, at: [1 m, 0 m, 0.2 m], tolerance: 10 mm}
# zones.yaml
`,
    fails: `
# no cavity is recorded
`,
    passes: `
- {id: TC, box: [[0 m, -0.5 m, 0 m], [3 m, 0.5 m, 0.5 m]]}
`,
  },
  check({ model: { shell } }) {
    if (shell.nodes.length === 0 || shell.zones.some((zone) => zone.concealed)) return [];
    return [
      {
        message: `Access to ${shell.nodes.length} nodes is not verified: no cavity is recorded as concealed; add the troughs, trusses and bays to zones.yaml with \`concealed: true\``,
        ids: [shell.id],
        place: shell.source.place(),
      },
    ];
  },
};
