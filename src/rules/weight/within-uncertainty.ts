import type { Rule, RuleFinding } from '../rule.js';
import { alsoIn, axlePlace, casesOf, kg } from './text.js';

export const withinUncertainty: Rule = {
  name: 'weight.within-uncertainty',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'An axle, or the whole vehicle, with a margin smaller than the uncertainty of its load.',
  why: 'It may be over its rating; these figures cannot tell.',
  source: 'JCGM 100:2008 (expanded uncertainty, k = 2); that such a margin does not count as met is a rule of this tool',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 4995 kg, drive: 5500 kg}}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 4500 kg, drive: 5500 kg}}
`,
  },
  check({ figures, model }) {
    const { ratings, conditions } = figures.weights;
    const axles = ratings.flatMap((rating): RuleFinding[] => {
      const all = casesOf(conditions, rating.axle, (one) => one.condition.certified);
      const near = all.filter((one) => one.load.verdict === 'within uncertainty');
      const [worst] = near;
      // An axle that is over in another condition is told there.
      if (!worst || all.some((one) => one.load.verdict === 'over')) return [];
      const { load, condition } = worst;
      const by = condition.contributions[0];
      const most = by && load.marginKg !== undefined ? `, most of it from ${by.name}` : '';
      return [
        {
          message: `Axle ${rating.axle} has ${kg(model, load.marginKg ?? 0)} left in \`${condition.name}\`, expected more than its uncertainty of ± ${kg(model, load.uncertaintyKg)}${most}${alsoIn(near.map((one) => one.condition.name))}: weigh on a finer scale with tanks full or empty, or take off load`,
          ids: [rating.axle],
          place: axlePlace(model, rating.axle),
        },
      ];
    });
    const gross = conditions.filter((one) => one.certified && one.verdict === 'within uncertainty');
    if (gross.length === 0 || conditions.some((one) => one.certified && one.verdict === 'over')) return axles;
    const worst = gross.reduce((least, one) => ((one.gvwrMarginKg ?? 0) < (least.gvwrMarginKg ?? 0) ? one : least));
    return [
      ...axles,
      {
        message: `The vehicle has ${kg(model, worst.gvwrMarginKg ?? 0)} left to its GVWR in \`${worst.name}\`, expected more than its uncertainty of ± ${kg(model, worst.uncertaintyKg)}: weigh on a finer scale, or take off load`,
        ids: [model.shell.id],
        place: model.shell.source.place('chassis', 'gvwr'),
      },
    ];
  },
};
