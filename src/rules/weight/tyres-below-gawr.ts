import type { Rule } from '../rule.js';
import { axlePlace, kg } from './text.js';

/** Ratings typed in pounds and in kilograms differ by rounding. */
const ROUNDING_KG = 0.5;

export const tyresBelowGawr: Rule = {
  name: 'weight.tyres-below-gawr',
  severity: 'error',
  asks: 'defect',
  duty: 'administrator',
  finds: 'Tyres that together carry less than the GAWR of their axle, at their recorded pressure.',
  why: 'The axle may be loaded to its rating by right, and the tyres may not.',
  source: '49 CFR 571.120 S5.1.2 (from memory); load index: ISO 4223-1, UNECE R54 Annex 4',
  check({ figures, model }) {
    return figures.weights.ratings.flatMap(({ axle, tyresKg, gawrKg }) => {
      if (tyresKg === undefined || gawrKg === undefined || tyresKg >= gawrKg - ROUNDING_KG) return [];
      return [
        {
          message: `Tyres of axle ${axle} carry ${kg(model, tyresKg)} together, expected at least its GAWR of ${kg(model, gawrKg)}: fit tyres of a higher load index, raise the inflation if the maker allows it, or correct \`load_index\`, \`count\` or \`inflation\``,
          ids: [axle],
          place: axlePlace(model, axle, 'tyres'),
        } as const,
      ];
    });
  },
};
