import type { Rule } from '../rule.js';
import { axlePlace, kg } from './text.js';

/** Ratings typed in pounds and in kilograms differ by rounding. */
const ROUNDING_KG = 0.5;

export const tyresBelowGawr: Rule = {
  name: 'weight.tyres-below-gawr',
  severity: 'error',
  asks: 'defect',
  duty: 'administrator',
  finds: 'Tires that together carry less than the GAWR of their axle, at their recorded pressure.',
  why: 'The axle may be loaded to its rating by right, and the tires may not.',
  source: '49 CFR 571.120 S5.1.2, as NHTSA letter nht87-2.92 restates it; load index: ISO 4223-1, UNECE R54 Annex 4',
  examples: {
    given: `
# shell.yaml
shell: X-1
title: Example coach
chassis:
  gvwr: 12000 kg
  axles:
    - {id: drive, x: 5 m, gawr: 9000 kg, dual: yes}
`,
    fails: `
    - {id: steer, x: 0 m, gawr: 6200 kg, tyres: {count: 2, load_index: 144}}   # 2 x 2,800 kg
`,
    passes: `
    - {id: steer, x: 0 m, gawr: 6200 kg, tyres: {count: 2, load_index: 148}}   # 2 x 3,150 kg
`,
  },
  check({ figures, model }) {
    return figures.weights.ratings.flatMap(({ axle, tyresKg, gawrKg }) => {
      if (tyresKg === undefined || gawrKg === undefined || tyresKg >= gawrKg - ROUNDING_KG) return [];
      return [
        {
          message: `Tires of axle ${axle} carry ${kg(model, tyresKg)} together, expected at least its GAWR of ${kg(model, gawrKg)}: fit tires of a higher load index, raise the inflation if the maker allows it, or correct \`load_index\`, \`count\` or \`inflation\``,
          ids: [axle],
          place: axlePlace(model, axle, 'tyres'),
        } as const,
      ];
    });
  },
};
