import type { Rule, RuleFinding } from '../rule.js';
import { axlePlace, kg } from './text.js';

export const worstOver: Rule = {
  name: 'weight.worst-over',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'An axle that some state of tanks, seats and bays overloads, though each stays within its stated limit and the GVWR is kept.',
  why: 'A user who keeps to every label can still overload this axle.',
  source: 'statics, by search over tanks, belted seats and bays; the rating as in weight.over-rating',
  check({ figures, model }) {
    const { conditions, ratings } = figures.weights;
    return ratings.flatMap((rating): RuleFinding[] => {
      const worst = conditions.find((one) => one.worstFor === rating.axle);
      const load = worst?.axles.find((one) => one.axle === rating.axle);
      const toldAlready = conditions.some(
        (one) => one.certified && one.axles.some((each) => each.axle === rating.axle && each.verdict === 'over'),
      );
      if (!worst || load?.verdict !== 'over' || toldAlready) return [];
      return [
        {
          message: `Axle ${rating.axle} would carry ${kg(model, load.loadKg)} with ${worst.holds}, expected at most ${kg(model, load.limitKg ?? 0)}: lower a bay limit, or tell the owner not to combine these`,
          ids: [rating.axle],
          place: axlePlace(model, rating.axle),
        },
      ];
    });
  },
};
