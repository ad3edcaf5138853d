import { dateOf } from '../../compute/weights/built.js';
import { dayOf } from '../../quantity/day.js';
import type { Rule } from '../rule.js';
import { ticketName, ticketPlace } from './text.js';

export const ticketBeforeStage: Rule = {
  name: 'weight.ticket-before-stage',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A ticket of a stage that is dated before things of that same stage were fitted.',
  why: 'It does not weigh the stage that it names.',
  source: 'common practice, no source',
  examples: {
    given: `
# weights.yaml
- {id: T-1, date: 2026-05-04, stage: floor, scale: SC-1, condition: {fuel: 100 %}, readings: {steer: 3500 kg, drive: 5500 kg}}
# components.yaml
`,
    fails: `
- {id: CMP-1, name: Plywood floor, mass: 180 kg, at: [3 m, 0 m, 0.3 m], basis: weighed, stage: floor, date: 2026-05-11}
`,
    passes: `
- {id: CMP-1, name: Plywood floor, mass: 180 kg, at: [3 m, 0 m, 0.3 m], basis: weighed, stage: floor, date: 2026-05-01}
`,
  },
  check({ figures, model }) {
    return figures.weights.tickets.flatMap((figure) => {
      if (figure.stage === undefined) return [];
      // Work after close-out is later by its nature; weight.ticket-stale and weight.relabel weigh it.
      const amended = new Set(model.shell.amendments.flatMap((amendment) => amendment.changes));
      const later = figures.takeOff.items.flatMap((item) => {
        const date = dateOf(model, item.id);
        return !amended.has(item.id) && item.stage === figure.stage && date !== undefined && dayOf(date) > dayOf(figure.date)
          ? [{ id: item.id, date }]
          : [];
      });
      const last = later.reduce<(typeof later)[number] | undefined>((a, b) => (a && a.date >= b.date ? a : b), undefined);
      if (!last) return [];
      const more = later.length > 1 ? ` and ${later.length - 1} more` : '';
      return [
        {
          message: `${ticketName(figure)} is of stage ${figure.stage}, but ${last.id}${more} of that stage came later (${last.date}), expected the stage complete when weighed: weigh again, name the earlier stage, or list them under \`missing:\``,
          ids: [figure.id, ...later.map((one) => one.id)],
          place: ticketPlace(model, figure.id, 'stage'),
        } as const,
      ];
    });
  },
};
