import { outlineFault } from '../outline-fault.js';
import type { Rule } from '../rule.js';

export const memberSelfCrossing: Rule = {
  name: 'member.self-crossing',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A plate whose outline crosses itself, or whose corners enclose no area.',
  why: 'Two corners are exchanged: its area and mass come out wrong, and its joints are not found.',
  source: 'geometry',
  examples: {
    given: `
# members.yaml
`,
    fails: `
- {id: G-1, alloy: 6061-T6, plate: {thickness: 5/16 in, outline: [[0 m, 0 m, 0 m], [0.3 m, 0 m, 0.3 m], [0.3 m, 0 m, 0 m], [0 m, 0 m, 0.3 m]]}}
`,
    passes: `
- {id: G-1, alloy: 6061-T6, plate: {thickness: 5/16 in, outline: [[0 m, 0 m, 0 m], [0.3 m, 0 m, 0 m], [0.3 m, 0 m, 0.3 m], [0 m, 0 m, 0.3 m]]}}
`,
  },
  check({ model }) {
    return model.shell.members.flatMap(({ id, shape, source }) => {
      const what = shape.kind === 'plate' ? outlineFault(shape.outline) : undefined;
      if (what === undefined) return [];
      return [
        {
          message: `The outline of plate ${id} ${what}: list its corners in order around the edge`,
          ids: [id],
          place: source.place('plate', 'outline'),
        } as const,
      ];
    });
  },
};
