import { isOfTheHeat } from '../../compute/structure/materials.js';
import type { Model } from '../../model/shell.js';
import { didYouMean } from '../../source/nearest.js';
import type { Case, Rule, RuleFinding } from '../rule.js';

export const certificateMissing: Rule = {
  name: 'member.certificate-missing',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds:
    'A heat of which no certificate of type 3.1 or 3.2 is on record. One finding a heat; one note for the shell while the library has no certificates at all.',
  why: 'The paper of the heat is the only evidence that the metal is what its marking says.',
  source: 'EN 10204:2004 (3.1 and 3.2 are tested on the delivery itself) and EN 1090-3, unverified citation',
  examples: {
    given: `
# members.yaml
- {id: CB-1, section: RT4x2, alloy: 6061-T6, heat: H-1, from: [1 m, -1 m, 0 m], to: [1 m, 1 m, 0 m]}
# library/certificates.yaml
`,
    fails: `
- {id: MC-1, heats: [H-1], alloy: 6061-T6, type: 2.2}
`,
    passes: `
- {id: MC-1, heats: [H-1], alloy: 6061-T6, type: 3.1}
`,
  },
  check({ model, figures }) {
    const bare = figures.materials.heats.filter(({ certificates }) => !certificates.some(isOfTheHeat));
    if (bare.length === 0) return [];
    if (model.library.certificates.size === 0) return [none(model, bare.length)];
    const heats = [...model.library.certificates.values()].flatMap((one) => one.heats);
    return bare.flatMap((heat) => withoutPaper(heat, heats, model));
  },
};

type Heat = Case['figures']['materials']['heats'][number];

function withoutPaper({ heat, members, certificates }: Heat, known: readonly string[], { shell }: Model): readonly RuleFinding[] {
  const first = shell.members.find(({ id }) => id === members[0]);
  if (!first) return [];
  const more = members.length > 1 ? ` and ${members.length - 1} more` : '';
  const [weak] = certificates;
  const found =
    weak === undefined ? 'has no certificate' : `has only ${weak.id} of type ${weak.type}, which covers the order, not the heat`;
  const advice =
    weak === undefined
      ? `add it to library/certificates.yaml, or correct the heat${didYouMean(heat, known)}`
      : 'ask the mill for the inspection certificate';
  return [
    {
      message: `Heat ${heat} of ${first.id}${more} ${found}, expected one of type 3.1 or 3.2: ${advice}`,
      ids: [first.id, ...members.slice(1)],
      place: first.source.place('heat'),
      ...(weak ? { related: [{ message: `Certificate ${weak.id}`, place: weak.source.place('type') }] } : {}),
    },
  ];
}

function none({ shell }: Model, heats: number): RuleFinding {
  const first = shell.members.find(({ heat }) => heat !== undefined) ?? shell;
  return {
    severity: 'note',
    message: `The library has no certificates, so ${heats === 1 ? 'the heat' : `the ${heats} heats`} of this shell ${heats === 1 ? 'is' : 'are'} not verified: add them to library/certificates.yaml`,
    ids: [shell.id],
    place: first.source.place('heat'),
  };
}
