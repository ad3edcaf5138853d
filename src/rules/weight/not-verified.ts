import { stageOrder } from '../../compute/weights/built.js';
import type { Rule } from '../rule.js';

export const weightNotVerified: Rule = {
  name: 'weight.not-verified',
  severity: 'warning',
  asks: 'missing',
  duty: 'administrator',
  finds: 'Axle loads that no weighing backs up. A note while there is a prediction and the last stage is not signed off.',
  why: 'A check without evidence does not pass.',
  source: 'common practice, no source',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
# nothing is weighed
`,
    passes: `
- {id: T-1, date: 2026-05-04, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3500 kg, drive: 5500 kg}}
`,
  },
  check({ figures, model }) {
    const { weights } = figures;
    const { shell, library } = model;
    if (shell.chassis.axles.length === 0) return [];
    const undetermined = weights.conditions.every((one) => one.axles.length === 0);
    if (weights.basis === 'ticket' && !undetermined) return [];
    const last = library.stages.length - 1;
    const signed = last >= 0 && shell.signoffs.some((signoff) => stageOrder(model, signoff.stage) === last);
    const soft = weights.basis === 'prediction' && !signed && !undetermined;
    const why = undetermined
      ? (weights.problems[0] ?? 'the axle layout is not determined')
      : weights.basis === 'prediction'
        ? 'they are based on the bare chassis and the takeoff alone, expected a verified scale ticket: weigh, and record it in weights.yaml'
        : 'neither a verified scale ticket nor the bare chassis is on record, expected one of them: add `chassis: bare:`, and weigh';
    return [
      {
        severity: soft ? 'note' : 'warning',
        message: `Axle loads are not verified: ${why}`,
        ids: [shell.id],
        place: shell.source.place('chassis', 'axles'),
      },
    ];
  },
};
