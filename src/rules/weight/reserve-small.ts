import type { Rule, RuleFinding } from '../rule.js';
import { axlePlace, kg, share } from './text.js';

export const reserveSmall: Rule = {
  name: 'weight.reserve-small',
  severity: 'note',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'An axle with less left, after the uncertainty of its load, than the reserve for what is still to come: 10 % of its rating, 5 % once the last stage is weighed.',
  why: 'Builds grow: the next trade has nothing left to spend on this axle.',
  source: 'common practice, no source; that a reserve is kept and drawn down: SAWE recommended practice (unverified citation)',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, stage: floor, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 4700 kg, drive: 5500 kg}}
`,
    passes: `
- {id: T-1, date: 2026-05-04, stage: floor, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3700 kg, drive: 5500 kg}}
`,
  },
  check({ figures, model }) {
    const { budget, reserve, conditions } = figures.weights;
    return budget.flatMap((one): RuleFinding[] => {
      const over = conditions.some(
        (each) => each.certified && each.axles.some((load) => load.axle === one.axle && load.verdict === 'over'),
      );
      if (one.leftKg >= 0 || over) return [];
      return [
        {
          message: `Axle ${one.axle} has ${kg(model, one.leftKg + one.reserveKg)} left beyond its uncertainty in \`${one.condition}\`, expected ${kg(model, one.reserveKg)} (${share(reserve)}) in reserve: nothing more over this axle without taking something off`,
          ids: [one.axle],
          place: axlePlace(model, one.axle),
        },
      ];
    });
  },
};
