import type { Rule, RuleFinding } from '../rule.js';
import { axlePlace, kg, share } from './text.js';

/** Fraction of the axle's load. Common practice, no source. */
const LIMIT = 0.05;

export const leftRight: Rule = {
  name: 'weight.left-right',
  severity: 'note',
  asks: 'defect',
  duty: 'administrator',
  finds: 'An axle whose ends differ by more than 5 % of its load, unladen.',
  why: 'The vehicle leans, and wears one side.',
  source: 'common practice, no source',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: {left: 1900 kg, right: 1600 kg}, drive: {left: 2750 kg, right: 2750 kg}}}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: {left: 1760 kg, right: 1740 kg}, drive: {left: 2750 kg, right: 2750 kg}}}
`,
  },
  check({ figures, model }) {
    const unladen = figures.weights.conditions.find((one) => one.name === 'unladen' && one.kind === 'standard');
    if (!unladen || figures.weights.basis === 'none') return [];
    return unladen.axles.flatMap(({ axle, loadKg, leftKg, rightKg }): RuleFinding[] => {
      if (leftKg === undefined || rightKg === undefined || loadKg <= 0) return [];
      const apart = Math.abs(leftKg - rightKg);
      if (apart <= LIMIT * loadKg) return [];
      return [
        {
          message: `Axle ${axle} carries ${kg(model, leftKg)} left and ${kg(model, rightKg)} right unladen, ${share(apart / loadKg)} of its load apart, expected at most ${share(LIMIT)}: move heavy items to the lighter side`,
          ids: [axle],
          place: axlePlace(model, axle),
        },
      ];
    });
  },
};
