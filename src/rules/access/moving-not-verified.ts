import type { Rule } from '../rule.js';

export const movingNotVerified: Rule = {
  name: 'access.moving-not-verified',
  severity: 'note',
  asks: 'missing',
  duty: 'inspector',
  finds: 'Tyres and slide-outs whose room cannot be worked out, because travel, size or place is not on record.',
  why: 'Nothing was judged against them.',
  source: 'common practice, no source',
  check({ model: { shell }, figures }) {
    const { unknown } = figures.clearances;
    if (unknown.length === 0 || (shell.runs.length === 0 && shell.members.length === 0)) return [];
    const told = unknown.map(({ id, kind, missing }) => `${kind === 'tyre' ? 'axle' : 'opening'} ${id} (${missing.join(', ')})`);
    return [
      {
        message: `Clear of moving tyres and slides is not verified for ${told.join('; ')}: not on record, expected in shell.yaml and openings.yaml`,
        ids: unknown.map(({ id }) => id),
        place: shell.source.place(),
      },
    ];
  },
};
