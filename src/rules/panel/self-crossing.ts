import { outlineFault } from '../outline-fault.js';
import type { Rule } from '../rule.js';

export const selfCrossing: Rule = {
  name: 'panel.self-crossing',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A panel whose outline crosses itself, or whose corners enclose no area.',
  why: 'Two corners are exchanged: its area and mass come out wrong.',
  source: 'geometry',
  examples: {
    given: `
# panels.yaml
`,
    fails: `
- {id: SK-1, kind: skin, alloy: 5052-H32, thickness: 2 mm, outline: [[0 m, -1 m, 0 m], [1 m, -1 m, 1 m], [1 m, -1 m, 0 m], [0 m, -1 m, 1 m]]}
`,
    passes: `
- {id: SK-1, kind: skin, alloy: 5052-H32, thickness: 2 mm, outline: [[0 m, -1 m, 0 m], [1 m, -1 m, 0 m], [1 m, -1 m, 1 m], [0 m, -1 m, 1 m]]}
`,
  },
  check({ model }) {
    return model.shell.panels.flatMap(({ id, outline, source }) => {
      const what = outlineFault(outline);
      if (what === undefined) return [];
      return [
        {
          message: `The outline of panel ${id} ${what}: list its corners in order around the edge`,
          ids: [id],
          place: source.place('outline'),
        } as const,
      ];
    });
  },
};
