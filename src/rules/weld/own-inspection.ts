import type { Rule } from '../rule.js';

export const ownInspection: Rule = {
  name: 'weld.own-inspection',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A weld whose only acceptance is by the welder who made it.',
  why: 'Nobody sees their own undercut: the look that counts is another’s.',
  source: 'common practice, no source',
  check({ model }) {
    return model.shell.welds.flatMap((weld) => {
      const accepted = weld.inspections.filter(({ result }) => result === 'accept');
      const own = accepted.find(({ by }) => by === weld.welder);
      if (!own || accepted.some(({ by }) => by !== weld.welder)) return [];
      return [
        {
          message: `Weld ${weld.id} was accepted by ${own.by}, who made it, expected someone else: have it inspected again and add the inspection`,
          ids: [weld.id, own.by],
          place: weld.source.place('inspections', weld.inspections.indexOf(own), 'by'),
        } as const,
      ];
    });
  },
};
