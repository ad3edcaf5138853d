import { signedStages } from '../../closeout/signed.js';
import type { Model } from '../../model/shell.js';
import { TWO_MEMBERS } from '../example-records.js';
import type { Rule } from '../rule.js';

const NAMED = 6;

export const lapsed: Rule = {
  name: 'signoff.lapsed',
  severity: 'error',
  asks: 'missing',
  duty: 'inspector',
  finds: 'A stage whose records changed after its sign-off. A warning until every stage is signed off.',
  why: 'A signature covers what its signer saw. Move a pipe, and its pressure test and the sign-off that covers it lapse.',
  source: 'common practice, no source',
  examples: {
    given: `
${TWO_MEMBERS}
# signoffs.yaml
`,
    fails: `
- {stage: floor, role: inspector, by: J2, date: 2026-03-31, digest: c1-0000000000000000000000000000000000000000000000000000000000000000}
`,
    passes: `
# not signed
`,
  },
  check({ model, outside }) {
    const severity = everyStageSigned(model) ? 'error' : 'warning';
    return signedStages(model).flatMap(({ signoff, standing }) => {
      if (standing !== 'lapsed') return [];
      const changed = outside?.lapsedBy?.get(signoff.id) ?? [];
      const ids = changed.map((one) => one.slice(one.lastIndexOf(' ') + 1));
      return [
        {
          severity,
          message: `Sign-off of stage ${signoff.stage} by ${signoff.by} (${signoff.role}) of ${signoff.date} has lapsed: ${reasonText(changed, model)}, expected what was signed: look at it again, then \`shellbook signoff ${model.shell.id} ${signoff.stage} --by ${signoff.by}\``,
          ids: [signoff.id, ...ids],
          place: signoff.source.place('stage'),
        } as const,
      ];
    });
  },
};

const everyStageSigned = ({ shell, library }: Model): boolean =>
  library.stages.every((stage) => shell.signoffs.some((signoff) => signoff.stage === stage.id));

function reasonText(changed: readonly string[], { shell }: Model): string {
  if (changed.length === 0) return 'records that it covers have changed since';
  const texts = changed.slice(0, NAMED).map((one) => {
    const amendment = shell.amendments.find((amended) => amended.changes.includes(one.slice(one.lastIndexOf(' ') + 1)));
    return amendment ? `${one} (${amendment.id})` : one;
  });
  const more = changed.length - texts.length;
  return `${texts.join(', ')}${more > 0 ? ` and ${more} more` : ''} changed since`;
}
