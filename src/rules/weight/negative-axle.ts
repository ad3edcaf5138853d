import type { Rule, RuleFinding } from '../rule.js';
import { axlePlace, casesOf, kg } from './text.js';

/** Less than this is rounding, not lift. */
const DUST_KG = 0.5;

export const negativeAxle: Rule = {
  name: 'weight.negative-axle',
  severity: 'error',
  asks: 'defect',
  duty: 'administrator',
  finds: 'An axle that would lift off the road in a loading condition.',
  why: 'Load behind the rear axles lightens the front one: it can neither steer nor brake.',
  source: 'statics: sum of moments about the rear group',
  examples: {
    given: `
# weights.yaml
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 300 kg, drive: 6000 kg}}
# shell.yaml
shell: X-1
title: Example coach
chassis:
  gvwr: 14000 kg
  axles: [{id: steer, x: 0 m, gawr: 5000 kg}, {id: drive, x: 5 m, gawr: 9000 kg}]
tanks:
  - {id: FUEL, contents: diesel, capacity: 200 L, at: [2 m, 0.9 m, 0 m]}
`,
    fails: `
  - {id: FRESH, contents: water, capacity: 1000 L, at: [8 m, 0 m, 0 m]}
`,
    passes: `
  - {id: FRESH, contents: water, capacity: 1000 L, at: [3 m, 0 m, 0 m]}
`,
  },
  check({ figures, model }) {
    // Without the chassis the recorded shell alone says nothing of this.
    if (figures.weights.basis === 'none') return [];
    return figures.weights.ratings.flatMap((rating): RuleFinding[] => {
      const lifting = casesOf(figures.weights.conditions, rating.axle, (one) => one.load.loadKg < -DUST_KG);
      const least = [...lifting].sort((a, b) => a.load.loadKg - b.load.loadKg)[0];
      if (!least) return [];
      return [
        {
          message: `Axle ${rating.axle} would carry ${kg(model, least.load.loadKg)} in \`${least.condition.name}\`, expected more than nothing: move load towards this axle, and check the positions of the heaviest items`,
          ids: [rating.axle],
          place: axlePlace(model, rating.axle),
        },
      ];
    });
  },
};
