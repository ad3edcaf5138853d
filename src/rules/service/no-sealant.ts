import { position } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const noSealant: Rule = {
  name: 'service.no-sealant',
  severity: 'note',
  asks: 'missing',
  duty: 'trade',
  finds: 'A run that passes through a skin, roof, cap or belly panel without sealing of the hole on record.',
  why: 'Water, road salt and exhaust come in by the hole of a wire long before anybody sees it.',
  source: 'common practice, no source',
  check({ model: { shell, shop }, figures }) {
    const runs = new Map(shell.runs.map((run) => [run.id, run] as const));
    return figures.services.crossings.flatMap(({ run: id, through, at, sealed }) => {
      const run = runs.get(id);
      if (!run || sealed !== false) return [];
      return [
        {
          message: `${id} passes through panel ${through} to the outside at ${position(at, shop.units)} without sealing on record: look, and add \`sealed: [${through}]\``,
          ids: [id, through],
          place: run.source.place('sealed'),
        } as const,
      ];
    });
  },
};
