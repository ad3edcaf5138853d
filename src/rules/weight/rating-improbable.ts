import { hasDuals } from '../../compute/weights/tyre-loads.js';
import { KG_PER_LB } from '../../quantity/units.js';
import type { Rule } from '../rule.js';
import { axlePlace, kg } from './text.js';

/** More than any common road tyre of this size carries: load index 169 single, 158 in duals. */
const MOST_SINGLE_KG = 5800;
const MOST_DUAL_KG = 4250;

export const ratingImprobable: Rule = {
  name: 'weight.rating-improbable',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'An axle rating that its number of tires could not carry whatever they were: pounds taken for kilograms.',
  why: 'A rating typed in the wrong unit is more than double, and every margin on it is false.',
  source: 'common practice, no source; load index: ISO 4223-1',
  examples: {
    given: `
# shell.yaml
shell: X-1
title: Example coach
chassis:
  gvwr: 12000 kg
  axles:
    - {id: drive, x: 5 m, gawr: 9000 kg, dual: yes}
`,
    fails: `
    - {id: steer, x: 0 m, gawr: 14600 kg, tyres: {count: 2, load_index: 150}}
`,
    passes: `
    - {id: steer, x: 0 m, gawr: 14600 lb, tyres: {count: 2, load_index: 150}}
`,
  },
  check({ model }) {
    return model.shell.chassis.axles.flatMap((axle) => {
      const count = axle.tyres?.count ?? (hasDuals(axle) ? 4 : 2);
      const most = count * (hasDuals(axle) ? MOST_DUAL_KG : MOST_SINGLE_KG);
      const fields = [
        ['gawr', axle.gawrKg],
        ['suspension', axle.suspensionKg],
      ] as const;
      return fields.flatMap(([field, ratingKg]) => {
        if (ratingKg === undefined || ratingKg <= most) return [];
        const meant = Math.round(ratingKg).toLocaleString('en-US');
        return [
          {
            message: `\`${field}\` of axle ${axle.id} is ${kg(model, ratingKg)} on ${count} tires, expected at most about ${kg(model, most)}: if the label says pounds, type \`${field}: ${meant} lb\`, which is ${kg(model, ratingKg * KG_PER_LB)}`,
            ids: [axle.id],
            place: axlePlace(model, axle.id, field),
          } as const,
        ];
      });
    });
  },
};
