import type { Rule, RuleFinding } from '../rule.js';
import { alsoIn, axlePlace, casesOf, kg, share } from './text.js';

export const marginSmall: Rule = {
  name: 'weight.margin-small',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: "An axle with less left than the shop's limit (`limits: axle_margin`, 3 % where not typed).",
  why: 'What comes aboard later always weighs something, and a scale repair or a wet coach eats a small margin.',
  source: 'common practice, no source',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 4900 kg, drive: 5500 kg}}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 4500 kg, drive: 5500 kg}}
`,
  },
  check({ figures, model }) {
    const { axleMargin } = model.shop.limits;
    return figures.weights.ratings.flatMap((rating): RuleFinding[] => {
      const all = casesOf(figures.weights.conditions, rating.axle, (one) => one.condition.certified);
      const small = all.filter(
        ({ load }) =>
          load.verdict === 'within' &&
          load.limitKg !== undefined &&
          load.marginKg !== undefined &&
          load.marginKg < axleMargin * load.limitKg,
      );
      const [worst] = small;
      if (!worst || all.some((one) => one.load.verdict === 'over')) return [];
      const { load, condition } = worst;
      const part = (load.marginKg ?? 0) / (load.limitKg ?? 1);
      return [
        {
          message: `Axle ${rating.axle} has ${kg(model, load.marginKg ?? 0)} (${share(part)}) left in \`${condition.name}\`, expected at least ${share(axleMargin)} of ${kg(model, load.limitKg ?? 0)}${alsoIn(small.map((one) => one.condition.name))}: move or take off load`,
          ids: [rating.axle],
          place: axlePlace(model, rating.axle),
        },
      ];
    });
  },
};
