import type { Rule, RuleFinding } from '../rule.js';
import { axlePlace } from './text.js';

export const liftedOver: Rule = {
  name: 'weight.lifted-over',
  severity: 'note',
  asks: 'defect',
  duty: 'administrator',
  finds: 'Loading conditions in which a liftable axle must stay down.',
  why: 'With that axle up the others carry its load, and one of them is over its rating.',
  source: 'statics; the rating as in weight.over-rating',
  examples: {
    given: `
# shell.yaml
shell: X-1
title: Example coach
tanks: [{id: FUEL, contents: diesel, capacity: 200 L, at: [2 m, 0.9 m, 0 m]}]
chassis:
  gvwr: 20000 kg
  axles:
    - {id: steer, x: 0 m, gawr: 6000 kg}
    - {id: drive, x: 5 m, gawr: 9000 kg}
    - {id: tag, x: 6.3 m, gawr: 6000 kg, lift: yes, mass: 500 kg, share: {with: drive, fraction: 0.4}}
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 5000 kg, drive: 7500 kg, tag: 5000 kg}}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3000 kg, drive: 3600 kg, tag: 2400 kg}}
`,
  },
  check({ figures, model }) {
    return model.shell.chassis.axles.flatMap((axle): RuleFinding[] => {
      if (!axle.lift) return [];
      const suffix = ` / ${axle.id} up`;
      const over = figures.weights.conditions.filter(
        (one) => one.kind === 'lifted' && one.name.endsWith(suffix) && one.axles.some((each) => each.verdict === 'over'),
      );
      if (over.length === 0) return [];
      const names = over.map((one) => one.name.slice(0, -suffix.length));
      const others = new Set(over.flatMap((one) => one.axles.filter((each) => each.verdict === 'over').map((each) => each.axle)));
      const never = names.includes('unladen');
      return [
        {
          message: `With axle ${axle.id} up, axle ${[...others].join(', ')} is over its rating in ${names.join(', ')}, expected it down then: ${never ? 'label its switch so: up only to manoeuvre, as the chassis maker allows' : 'label its switch with the conditions in which it may be lifted'}`,
          ids: [axle.id, ...others],
          place: axlePlace(model, axle.id, 'lift'),
        },
      ];
    });
  },
};
