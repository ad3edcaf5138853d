import type { Rule, RuleFinding } from '../rule.js';
import { axlePlace, casesOf, kg } from './text.js';

export const wheelEndOver: Rule = {
  name: 'weight.wheel-end-over',
  severity: 'error',
  asks: 'defect',
  duty: 'administrator',
  finds: 'One end of an axle over half of what the axle, and so its own tires, may carry.',
  why: 'An axle within its rating may still have one tire over.',
  source:
    '49 CFR 571.120 S5.1.2, as NHTSA letter nht87-2.92 restates it, for tyres; half of the axle rating an end: common practice, no source',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: {left: 2700 kg, right: 1900 kg}, drive: {left: 3000 kg, right: 3000 kg}}}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: {left: 2300 kg, right: 2300 kg}, drive: {left: 3000 kg, right: 3000 kg}}}
`,
  },
  check({ figures, model }) {
    return figures.weights.ratings.flatMap((rating): RuleFinding[] => {
      const { limitKg } = rating;
      if (limitKg === undefined) return [];
      const endKg = limitKg / 2;
      const heavier = (one: { readonly leftKg?: number; readonly rightKg?: number }): number =>
        Math.max(one.leftKg ?? 0, one.rightKg ?? 0);
      const picked = casesOf(
        figures.weights.conditions,
        rating.axle,
        // An axle over as a whole is told as such.
        ({ condition, load }) => condition.certified && load.verdict !== 'over' && heavier(load) > endKg + 1e-6,
      );
      const worst = [...picked].sort((a, b) => heavier(b.load) - heavier(a.load))[0];
      if (!worst) return [];
      const { load, condition } = worst;
      const side = (load.leftKg ?? 0) > (load.rightKg ?? 0) ? 'left' : 'right';
      return [
        {
          message: `The ${side} end of axle ${rating.axle} carries ${kg(model, heavier(load))} in \`${condition.name}\`, expected at most half of the axle's ${kg(model, limitKg)}, ${kg(model, endKg)}: move load to the other side, or weigh each end`,
          ids: [rating.axle],
          place: axlePlace(model, rating.axle),
        },
      ];
    });
  },
};
