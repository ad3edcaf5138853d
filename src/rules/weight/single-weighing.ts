import { stageOrder } from '../../compute/weights/built.js';
import type { Rule } from '../rule.js';
import { ticketName, ticketOf, ticketPlace } from './text.js';

export const singleWeighing: Rule = {
  name: 'weight.single-weighing',
  severity: 'note',
  asks: 'missing',
  duty: 'administrator',
  finds: 'A finished vehicle with only one weighing and no gross reading to check it.',
  why: 'A slip of the scale shows only when something else was read.',
  source: 'common practice, no source',
  examples: {
    given: `
# weights.yaml
`,
    fails: `
- {id: T-1, date: 2026-05-04, stage: finished, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3500 kg, drive: 5500 kg}}
`,
    passes: `
- {id: T-1, date: 2026-05-04, stage: finished, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3500 kg, drive: 5500 kg}, gross: 9000 kg}
`,
  },
  check({ figures, model }) {
    const { basisTicket, tickets } = figures.weights;
    const figure = tickets.find((one) => one.id === basisTicket);
    const last = model.library.stages.length - 1;
    if (!figure || last < 0 || stageOrder(model, figure.stage) !== last) return [];
    const others = tickets.filter((one) => one.verified && one.id !== figure.id && one.stage === figure.stage);
    if (others.length > 0 || ticketOf(model, figure.id)?.grossKg !== undefined) return [];
    return [
      {
        message: `${ticketName(figure)} is the only weighing of the finished vehicle, expected a second one or a \`gross:\` reading beside its axles: weigh all axles at once as well`,
        ids: [figure.id],
        place: ticketPlace(model, figure.id),
      },
    ];
  },
};
