import type { Rule } from '../rule.js';
import { axlePlace } from './text.js';

export const noRating: Rule = {
  name: 'weight.no-rating',
  severity: 'warning',
  asks: 'missing',
  duty: 'administrator',
  finds: 'An axle without any rating on record.',
  why: 'Its load is computed, but nothing says whether it may carry it: it is not verified, and bays are not held to it.',
  source:
    '49 CFR 567.5(d) for a body on an incomplete vehicle, 567.4(g)(4) for a vehicle of one maker (GAWR of each axle on the certification label; NHTSA letter aiam2449); 567.5(d) is an unverified citation',
  examples: {
    given: `
# shell.yaml
shell: X-1
title: Example coach
chassis:
  gvwr: 12000 kg
  axles:
    - {id: drive, x: 5 m, gawr: 9000 kg}
`,
    fails: `
    - {id: steer, x: 0 m}
`,
    passes: `
    - {id: steer, x: 0 m, gawr: 5000 kg}
`,
  },
  check({ figures, model }) {
    return figures.weights.ratings.flatMap(({ axle, limitKg, gawrKg }) => {
      if (gawrKg !== undefined) return [];
      const found = limitKg === undefined ? 'No rating' : 'No GAWR';
      return [
        {
          message: `${found} on record for axle ${axle}, expected its GAWR from the label or the incomplete vehicle document: add \`gawr:\`, as \`gawr: 14600 lb\``,
          ids: [axle],
          place: axlePlace(model, axle),
        } as const,
      ];
    });
  },
};
