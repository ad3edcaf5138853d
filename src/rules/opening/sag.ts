import { smallLength, type UnitSystem } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const sag: Rule = {
  name: 'opening.sag',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A header that was measured to sag by more than the shop’s limit (1/16 in unless set).',
  why: 'A sagged header rubs the slide-out or the door, and says that it carries more than it should.',
  source: 'limit `header_sag` in shop.yaml; common practice, no source',
  examples: {
    given: `
# openings.yaml
`,
    fails: `
- {id: DR-1, kind: door, wall: right, sill: [[1 m, 1 m, 0 m], [1.7 m, 1 m, 0 m]], width: 700 mm, height: 1900 mm, measured: {diagonals: [2025 mm, 2025 mm], header_sag: [{at: 350 mm, drop: 3 mm}]}}
`,
    passes: `
- {id: DR-1, kind: door, wall: right, sill: [[1 m, 1 m, 0 m], [1.7 m, 1 m, 0 m]], width: 700 mm, height: 1900 mm, measured: {diagonals: [2025 mm, 2025 mm], header_sag: [{at: 350 mm, drop: 1 mm}]}}
`,
  },
  check({ model: { shell, shop }, figures }) {
    const byId = new Map(shell.openings.map((opening) => [opening.id, opening]));
    return figures.openings.flatMap(({ id, sagMm, headerWithPanelMm }) => {
      const opening = byId.get(id);
      const limit = shop.limits.headerSagMm;
      if (!opening || sagMm === undefined || sagMm <= limit + ROUNDING_MM) return [];
      const own =
        headerWithPanelMm === undefined
          ? ''
          : ` (its own mass and the panels over it alone give ${smallest(headerWithPanelMm, shop.units)} on plain supports at its sides)`;
      return [
        {
          message: `Header of opening ${id} sags ${smallLength(sagMm, shop.units)}${own}, expected at most ${smallLength(limit, shop.units)}: find what loads it, correct and measure again, or record the decision in findings.yaml`,
          ids: [id, ...(opening.header === undefined ? [] : [opening.header])],
          place: opening.source.place('measured', 'header_sag'),
        } as const,
      ];
    });
  },
};

/** A sag typed as the limit itself is not over it. */
const ROUNDING_MM = 1e-6;

/** A sixty-fourth is the least that is written. */
const smallest = (mm: number, units: UnitSystem): string =>
  mm < 0.2 ? `less than ${smallLength(0.4, units)}` : smallLength(mm, units);
