import { mass } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

/** Ratings typed in pounds and in kilograms differ by rounding. */
const ROUNDING_KG = 1;

export const gvwrAboveAxles: Rule = {
  name: 'shell.gvwr-above-axles',
  severity: 'error',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A gross vehicle weight rating above the sum of the axle ratings.',
  why: 'A vehicle loaded to it would overload an axle, so one of the figures was likely copied from another chassis.',
  source: 'NHTSA interpretation letter aiam0613 (1971); for motor homes 49 CFR 571.120 S10.2 (unverified citation)',
  examples: {
    given: `
# shell.yaml
shell: X-1
title: Example coach
chassis:
  axles: [{id: steer, x: 0 m, gawr: 5000 kg}, {id: drive, x: 5 m, gawr: 9000 kg}]
`,
    fails: `
  gvwr: 15000 kg
`,
    passes: `
  gvwr: 14000 kg
`,
  },
  check({ model: { shell, shop } }) {
    const { gvwrKg, axles } = shell.chassis;
    if (gvwrKg === undefined || axles.length === 0 || axles.some((axle) => axle.gawrKg === undefined)) return [];
    const sumKg = axles.reduce((sum, axle) => sum + (axle.gawrKg as number), 0);
    if (gvwrKg <= sumKg + ROUNDING_KG) return [];
    return [
      {
        message: `GVWR ${mass(gvwrKg, shop.units)} is more than the axle ratings together, expected at most ${mass(sumKg, shop.units)}: compare both with the incomplete vehicle document`,
        ids: [shell.id, ...axles.map((axle) => axle.id)],
        place: shell.source.place('chassis', 'gvwr'),
      },
    ];
  },
};
