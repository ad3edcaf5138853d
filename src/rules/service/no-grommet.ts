import { position } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const noGrommet: Rule = {
  name: 'service.no-grommet',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'A run that passes through the metal of a member or panel without a grommet on record.',
  why: 'The edge of an aluminium hole saws through insulation and hose on the road.',
  source: 'common practice, no source; gas lines: state liquefied-gas vehicle rules, from memory',
  check({ model: { shell, shop }, figures }) {
    const runs = new Map(shell.runs.map((run) => [run.id, run] as const));
    return figures.services.crossings.flatMap(({ run: id, through, kind, at, grommet }) => {
      const run = runs.get(id);
      if (!run || grommet) return [];
      return [
        {
          message: `${id} passes through ${kind} ${through} at ${position(at, shop.units)} without a grommet on record: add \`grommets: [${through}]\`, or correct its way points`,
          ids: [id, through],
          place: run.source.place('grommets'),
        } as const,
      ];
    });
  },
};
