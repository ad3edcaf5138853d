import type { Rule } from '../rule.js';
import { kg } from './text.js';

/** Ratings typed in pounds and in kilograms differ by rounding. */
const ROUNDING_KG = 1;

export const gcwrBelowGvwr: Rule = {
  name: 'weight.gcwr-below-gvwr',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A gross combination weight rating below the GVWR.',
  why: 'The combination counts the vehicle itself, so one of the two is another chassis’s, or in another unit.',
  source: '49 CFR 571.3 (GVWR); 49 CFR 390.5 (GCWR), unverified citation',
  examples: {
    given: `
# shell.yaml
shell: X-1
title: Example coach
chassis:
  gvwr: 12000 kg
  axles: [{id: steer, x: 0 m, gawr: 5000 kg}, {id: drive, x: 5 m, gawr: 9000 kg}]
`,
    fails: `
  gcwr: 10000 kg
`,
    passes: `
  gcwr: 20000 kg
`,
  },
  check({ model }) {
    const { gvwrKg, gcwrKg } = model.shell.chassis;
    if (gvwrKg === undefined || gcwrKg === undefined || gcwrKg >= gvwrKg - ROUNDING_KG) return [];
    return [
      {
        message: `GCWR ${kg(model, gcwrKg)} is less than the GVWR, expected at least ${kg(model, gvwrKg)}: compare both with the incomplete vehicle document`,
        ids: [model.shell.id],
        place: model.shell.source.place('chassis', 'gcwr'),
      },
    ];
  },
};
