import type { Rule } from '../rule.js';

export const notMeasured: Rule = {
  name: 'opening.not-measured',
  severity: 'note',
  asks: 'missing',
  duty: 'trade',
  finds: 'An opening without both diagonals on record.',
  why: 'Whether it is square is not verified until it has been measured.',
  source: 'common practice, no source',
  examples: {
    given: `
# openings.yaml
`,
    fails: `
- {id: DR-1, kind: door, wall: right, sill: [[1 m, 1 m, 0 m], [1.7 m, 1 m, 0 m]], width: 700 mm, height: 1900 mm}
`,
    passes: `
- {id: DR-1, kind: door, wall: right, sill: [[1 m, 1 m, 0 m], [1.7 m, 1 m, 0 m]], width: 700 mm, height: 1900 mm, measured: {diagonals: [2025 mm, 2025 mm]}}
`,
  },
  check({ model }) {
    return model.shell.openings.flatMap(({ id, measured, source }) => {
      if (measured?.diagonalsMm) return [];
      return [
        {
          message: `Opening ${id} is not verified for square: both diagonals are missing: add \`measured: {diagonals: [.., ..]}\``,
          ids: [id],
          place: source.place('measured'),
        } as const,
      ];
    });
  },
};
