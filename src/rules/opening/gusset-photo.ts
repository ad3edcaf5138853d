import { isSlideOut } from '../../compute/structure/openings.js';
import type { Rule, RuleFinding } from '../rule.js';

export const gussetPhoto: Rule = {
  name: 'opening.gusset-photo',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'A corner gusset of a slide-out opening that no photo shows. A note until the opening’s stage is signed off.',
  why: 'The corners crack first, and the skin hides them: the photo is what a service shop has.',
  source: 'common practice, no source',
  check({ model: { shell }, figures }) {
    const signed = new Set(shell.signoffs.map(({ stage }) => stage));
    const shown = new Set(shell.photos.flatMap(({ of }) => of));
    const members = new Map(shell.members.map((member) => [member.id, member]));
    return shell.openings.filter(isSlideOut).flatMap((opening): readonly RuleFinding[] => {
      const found = figures.openings.find(({ id }) => id === opening.id)?.gussets ?? [];
      const bare = found.filter((id) => !shown.has(id) && (members.get(id)?.photos.length ?? 0) === 0);
      if (bare.length === 0) return [];
      const isSigned = opening.stage !== undefined && signed.has(opening.stage);
      return [
        {
          severity: isSigned ? 'warning' : 'note',
          message: `No photo shows ${bare.join(', ')} at ${bare.length === 1 ? 'a corner' : 'corners'} of opening ${opening.id}, expected one of each gusset before the skin goes on: add ${bare.length === 1 ? 'its id' : 'their ids'} to \`of\` of the photo`,
          ids: [opening.id, ...bare],
          place: opening.source.place('gussets'),
        },
      ];
    });
  },
};
