import { useOfContents } from '../../records/tank-contents.js';
import type { Rule } from '../rule.js';

export const tankUseMissing: Rule = {
  name: 'weight.tank-use-missing',
  severity: 'note',
  asks: 'missing',
  duty: 'administrator',
  finds: 'Tanks that do not record what they are used for (`use`). One finding a shell.',
  why: 'Whether a tank is full or empty in each loading, what holds gas and what is drained against frost goes by its use; without it by its contents alone: `water` may be fresh or waste.',
  source: 'common practice, no source',
  examples: {
    given: `
# shell.yaml
shell: X-1
`,
    fails: `
tanks:
  - {id: FRESH, contents: water, capacity: 50 gal, at: [2 m, 0 m, 0 m]}
`,
    passes: `
tanks:
  - {id: FRESH, use: fresh, contents: water, capacity: 50 gal, at: [2 m, 0 m, 0 m]}
`,
  },
  check({ model: { shell } }) {
    const silent = shell.tanks.filter(({ use }) => use === undefined);
    const first = silent[0];
    if (!first) return [];
    const asked = silent.map(({ id, contents }) => {
      const use = useOfContents(contents);
      return use === undefined ? `a \`use\` at ${id}` : `\`use: ${use}\` at ${id}, if that is what it is for`;
    });
    return [
      {
        message: `${silent.length === 1 ? `Tank ${first.id} does not record what it is` : `Tanks ${silent.map(({ id }) => id).join(', ')} do not record what they are`} used for, so figures go by the contents, expected fresh, waste, fuel, gas or fluid of each: type ${asked.join('; ')}`,
        ids: silent.map(({ id }) => id),
        place: first.source?.place('use') ?? shell.source.place('tanks'),
        proposes: silent.flatMap(({ id, contents }) => {
          const use = useOfContents(contents);
          return use === undefined ? [] : [{ kind: 'tank', id, path: ['use'], value: use }];
        }),
      },
    ];
  },
};
