import { signedStages } from '../../closeout/signed.js';
import { TWO_MEMBERS } from '../example-records.js';
import type { Rule } from '../rule.js';

export const signoffNotVerified: Rule = {
  name: 'signoff.not-verified',
  severity: 'note',
  asks: 'missing',
  duty: 'inspector',
  finds: 'A sign-off without a digest of what it covers, so nobody can tell whether it still holds.',
  why: 'A line typed by hand says who signed, but not for what. Closing needs a sign-off that can be compared.',
  source: 'common practice, no source',
  examples: {
    given: `
${TWO_MEMBERS}
# signoffs.yaml
`,
    fails: `
- {stage: floor, role: inspector, by: J2, date: 2026-03-31}
`,
    passes: `
# not signed
`,
  },
  check({ model }) {
    return signedStages(model).flatMap(({ signoff, standing }) => {
      if (standing !== 'not verified') return [];
      const found = signoff.digest === undefined ? 'has no digest' : 'has a digest that was not made by this shellbook';
      return [
        {
          message: `Sign-off of stage ${signoff.stage} by ${signoff.by} of ${signoff.date} ${found}, so it is not verified that it still holds: sign with \`shellbook signoff ${model.shell.id} ${signoff.stage} --by ${signoff.by}\``,
          ids: [signoff.id],
          place: signoff.source.place('stage'),
        } as const,
      ];
    });
  },
};
