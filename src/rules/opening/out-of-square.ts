import { number, smallLength } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const outOfSquare: Rule = {
  name: 'opening.out-of-square',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'An opening whose diagonals differ by more than the shop’s limit (1/8 in unless set).',
  why: 'A slide-out binds and a door leaks in an opening that is racked.',
  source: 'limit `diagonal_difference` in shop.yaml; common practice, no source',
  examples: {
    given: `
# openings.yaml
`,
    fails: `
- {id: DR-1, kind: door, wall: right, sill: [[1 m, 1 m, 0 m], [1.7 m, 1 m, 0 m]], width: 700 mm, height: 1900 mm, measured: {diagonals: [2025 mm, 2033 mm]}}
`,
    passes: `
- {id: DR-1, kind: door, wall: right, sill: [[1 m, 1 m, 0 m], [1.7 m, 1 m, 0 m]], width: 700 mm, height: 1900 mm, measured: {diagonals: [2025 mm, 2027 mm]}}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const byId = new Map(shell.openings.map((opening) => [opening.id, opening]));
    return figures.openings.flatMap(({ id, diagonalDifferenceMm, rackingDeg }) => {
      const opening = byId.get(id);
      const limit = shop.limits.diagonalDifferenceMm;
      if (!opening || diagonalDifferenceMm === undefined || diagonalDifferenceMm <= limit + ROUNDING_MM) return [];
      const racked = rackingDeg === undefined ? '' : ` (racked ${number(rackingDeg, 2)}°)`;
      return [
        {
          message: `Diagonals of opening ${id} differ by ${smallLength(diagonalDifferenceMm, shop.units)}${racked}, expected at most ${smallLength(limit, shop.units)}: pull it square and measure again, or record the decision in findings.yaml`,
          ids: [id],
          place: opening.source.place('measured', 'diagonals'),
        } as const,
      ];
    });
  },
};

/** A difference typed as the limit itself is not over it. */
const ROUNDING_MM = 1e-6;
