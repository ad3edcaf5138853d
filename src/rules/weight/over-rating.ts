import type { Rule, Case as RuleCase, RuleFinding } from '../rule.js';
import { alsoIn, axlePlace, casesOf, kg, limitWord } from './text.js';

export const overRating: Rule = {
  name: 'weight.over-rating',
  severity: 'error',
  asks: 'defect',
  duty: 'administrator',
  finds: 'An axle over its rating, or the whole over its GVWR, in a condition that the vehicle must carry as certified.',
  why: 'A tire, wheel, axle or spring over its rating fails on the road.',
  source: '49 CFR 571.3 (GAWR, GVWR); rating of an axle: the least of GAWR, tires, wheels and suspension on record',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 5400 kg, drive: 6000 kg}}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 4200 kg, drive: 6000 kg}}
`,
  },
  check(given) {
    const { figures, model } = given;
    const axles = figures.weights.ratings.flatMap((rating): RuleFinding[] => {
      const over = casesOf(
        figures.weights.conditions,
        rating.axle,
        (one) => one.condition.certified && one.load.verdict === 'over',
      );
      const [worst] = over;
      if (!worst) return [];
      const { load, condition } = worst;
      return [
        {
          message: `Axle ${rating.axle} carries ${kg(model, load.loadKg)} (± ${kg(model, load.uncertaintyKg)}) in \`${condition.name}\`, expected at most ${kg(model, load.limitKg ?? 0)} for ${limitWord(rating, model)}: ${kg(model, -(load.marginKg ?? 0))} over${alsoIn(over.map((one) => one.condition.name))}. Move or take off load, or lower the bay limits`,
          ids: [rating.axle],
          place: axlePlace(model, rating.axle, rating.limitedBy ?? 'gawr'),
        },
      ];
    });
    return [...axles, ...whole(given)];
  },
};

function whole({ figures, model }: RuleCase): readonly RuleFinding[] {
  const over = figures.weights.conditions
    .filter((one) => one.certified && one.verdict === 'over')
    .sort((a, b) => (a.gvwrMarginKg ?? 0) - (b.gvwrMarginKg ?? 0));
  const [worst] = over;
  if (!worst) return [];
  const { shell } = model;
  return [
    {
      message: `The vehicle weighs ${kg(model, worst.totalKg)} (± ${kg(model, worst.uncertaintyKg)}) in \`${worst.name}\`, expected at most its GVWR of ${kg(model, shell.chassis.gvwrKg ?? 0)}: ${kg(model, -(worst.gvwrMarginKg ?? 0))} over${alsoIn(over.map((one) => one.name))}. Take off load, or lower the bay limits`,
      ids: [shell.id],
      place: shell.source.place('chassis', 'gvwr'),
    },
  ];
}
