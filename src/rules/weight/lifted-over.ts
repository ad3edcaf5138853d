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
