import type { AxleLoad } from '../../compute/weights/types.js';
import type { Rule, RuleFinding } from '../rule.js';
import { axlePlace, kg } from './text.js';

export const worstOver: Rule = {
  name: 'weight.worst-over',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'An axle, or one end of it, that some state of tanks, seats, bays, slide-outs and liftable axles overloads, though each stays within its stated limit and the total within the GVWR.',
  why: 'A user who keeps to every label can still overload this axle, or the tires at one end of it.',
  source:
    'statics, by linear programmes over tanks, belted seats and bays; the rating as in weight.over-rating, half of it an end',
  examples: {
    given: `
# weights.yaml
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 4700 kg, drive: 5000 kg}}
# shell.yaml
shell: X-1
title: Example coach
tanks: [{id: FUEL, contents: diesel, capacity: 200 L, at: [2 m, 0.9 m, 0 m]}]
chassis:
  gvwr: 14000 kg
  axles: [{id: steer, x: 0 m, gawr: 5000 kg}, {id: drive, x: 5 m, gawr: 9000 kg}]
bays:
  - {id: REAR, at: [8 m, 0 m, 0 m], limit: 500 kg}
`,
    fails: `
  - {id: FRONT, at: [0 m, 0 m, 0 m], limit: 500 kg}
`,
    passes: `
  - {id: FRONT, at: [0 m, 0 m, 0 m], limit: 150 kg}
`,
  },
  check({ figures, model }) {
    const { conditions, ratings } = figures.weights;
    return ratings.flatMap((rating): RuleFinding[] => {
      const certified = conditions.filter((one) => one.certified).flatMap(({ axles }) => axles.filter(isOf(rating.axle)));
      const wholeKnown = certified.some((one) => overBy(one) > 0);
      const endKnown = certified.some((one) => overBy(one, 'left') > 0 || overBy(one, 'right') > 0);
      const found = conditions
        .filter((one) => one.worstFor === rating.axle && !(one.worstEnd ? wholeKnown || endKnown : wholeKnown))
        .flatMap((one) => one.axles.filter(isOf(rating.axle)).map((load) => ({ one, load, overKg: overBy(load, one.worstEnd) })))
        .filter(({ overKg }) => overKg > 0);
      // Over as a whole says it for its ends as well.
      const told = found.find(({ one }) => one.worstEnd === undefined) ?? found.sort((a, b) => b.overKg - a.overKg)[0];
      if (!told) return [];
      const { one, load, overKg } = told;
      const name = one.worstEnd ? `The ${one.worstEnd} end of axle ${rating.axle}` : `Axle ${rating.axle}`;
      const limitKg = (load.limitKg ?? 0) / (one.worstEnd ? 2 : 1);
      return [
        {
          message: `${name} would carry ${kg(model, limitKg + overKg)} with ${one.holds}, expected at most ${kg(model, limitKg)}: lower a bay limit, or tell the owner not to combine these`,
          ids: [rating.axle],
          place: axlePlace(model, rating.axle),
        },
      ];
    });
  },
};

const isOf = (axle: string) => (load: AxleLoad) => load.axle === axle;

/** By how much an axle, or one end of it, is over its limit, kg; dust is nothing. */
function overBy(load: AxleLoad, end?: 'left' | 'right'): number {
  if (load.limitKg === undefined || load.marginKg === undefined) return 0;
  const over = end === undefined ? -load.marginKg : ((end === 'left' ? load.leftKg : load.rightKg) ?? 0) - load.limitKg / 2;
  return over > 1e-6 ? over : 0;
}
