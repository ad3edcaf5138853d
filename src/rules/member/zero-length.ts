import { developedLengthMm } from '../../compute/solids.js';
import type { Rule } from '../rule.js';

export const zeroLength: Rule = {
  name: 'member.zero-length',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A member whose line starts and ends in one place.',
  why: 'It has no direction: it cannot be drawn, joined or weighed.',
  source: 'geometry',
  examples: {
    given: `
# members.yaml
`,
    fails: `
- {id: CB-1, section: RT4x2, alloy: 6061-T6, from: [1 m, -1 m, 0 m], to: [1 m, -1 m, 0 m]}
`,
    passes: `
- {id: CB-1, section: RT4x2, alloy: 6061-T6, from: [1 m, -1 m, 0 m], to: [1 m, 1 m, 0 m]}
`,
  },
  check({ model }) {
    return model.shell.members.flatMap(({ id, shape, source }) => {
      if (shape.kind !== 'line' || developedLengthMm(shape) > 0) return [];
      return [
        {
          message: `Member ${id} starts and ends in the same place, expected two: correct \`from\` or \`to\``,
          ids: [id],
          place: source.place('to'),
        } as const,
      ];
    });
  },
};
