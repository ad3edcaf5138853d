import { isSlideOut } from '../../records/opening.js';
import type { Rule, RuleFinding } from '../rule.js';

export const gussetPhoto: Rule = {
  name: 'opening.gusset-photo',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'A corner gusset of a slide-out opening that no photo shows. A note until the opening’s stage is signed off.',
  why: 'The corners crack first, and the skin hides them: the photo is what a service shop has.',
  source: 'common practice, no source',
  examples: {
    given: `
# openings.yaml
- {id: SO-1, kind: slide-out, wall: left, sill: [[1 m, -1.2 m, 0 m], [3 m, -1.2 m, 0 m]], width: 2000 mm, height: 1500 mm}
# members.yaml
- {id: G-1, part: corner gusset, role: gusset, alloy: 5052-H32, plate: {thickness: 5/16 in, outline: [[1 m, -1.2 m, 0 m], [1.3 m, -1.2 m, 0 m], [1 m, -1.2 m, 0.3 m]]}}
- {id: G-2, part: corner gusset, role: gusset, alloy: 5052-H32, plate: {thickness: 5/16 in, outline: [[3 m, -1.2 m, 0 m], [2.7 m, -1.2 m, 0 m], [3 m, -1.2 m, 0.3 m]]}}
- {id: G-3, part: corner gusset, role: gusset, alloy: 5052-H32, plate: {thickness: 5/16 in, outline: [[3 m, -1.2 m, 1.5 m], [2.7 m, -1.2 m, 1.5 m], [3 m, -1.2 m, 1.2 m]]}}
- {id: G-4, part: corner gusset, role: gusset, alloy: 5052-H32, plate: {thickness: 5/16 in, outline: [[1 m, -1.2 m, 1.5 m], [1.3 m, -1.2 m, 1.5 m], [1 m, -1.2 m, 1.2 m]]}}
# pictures
shells/X-1/photos/a.jpg: {sha256: ab}
# photos/photos.yaml
`,
    fails: `
# no photo shows them
`,
    passes: `
- {id: P-1, file: a.jpg, of: [G-1, G-2, G-3, G-4]}
`,
  },
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
