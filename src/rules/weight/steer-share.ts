import { LEAST_STEER_SHARE } from '../../compute/weights/conditions.js';
import type { Rule } from '../rule.js';
import { axlePlace, share } from './text.js';

export const steerShare: Rule = {
  name: 'weight.steer-share',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A loading condition with less than 20 % of the total on the steered axles.',
  why: 'A light front axle steers and brakes badly.',
  source:
    'European type rules for heavy vehicles ask for about 20 % (unverified citation); as a rule for every coach: common practice, no source',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 1500 kg, drive: 7000 kg}}
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 2500 kg, drive: 6000 kg}}
`,
  },
  check({ figures, model }) {
    const light = figures.weights.conditions
      .filter((one) => one.certified && one.steerShare !== undefined && one.steerShare < LEAST_STEER_SHARE)
      .sort((a, b) => (a.steerShare ?? 0) - (b.steerShare ?? 0));
    const [worst] = light;
    if (!worst || figures.weights.basis === 'none') return [];
    const { axles } = model.shell.chassis;
    const steered = axles.filter((axle) => axle.steered);
    const ids = (steered.length > 0 ? steered : axles.slice(0, 1)).map((axle) => axle.id);
    return [
      {
        message: `${ids.length > 1 ? 'Axles' : 'Axle'} ${ids.join(' and ')} ${ids.length > 1 ? 'carry' : 'carries'} ${share(worst.steerShare ?? 0)} of the total in \`${worst.name}\`, expected at least ${share(LEAST_STEER_SHARE)}: move load forward`,
        ids,
        place: axlePlace(model, ids[0] as string),
      },
    ];
  },
};
