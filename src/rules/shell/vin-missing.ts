import type { Rule } from '../rule.js';

export const vinMissing: Rule = {
  name: 'shell.vin-missing',
  severity: 'note',
  asks: 'missing',
  duty: 'administrator',
  finds: 'A shell without a vehicle identification number.',
  why: 'A vehicle built in more than one stage carries the number that the chassis maker gave it; without it nobody can tell whose book this is.',
  source: '49 CFR 565',
  examples: {
    given: `
# shell.yaml
`,
    fails: `
shell: X-1
title: Example coach
`,
    passes: `
shell: X-1
title: Example coach
vin: 1Z9FBV5T7Z0418021
`,
  },
  check({ model: { shell } }) {
    if (shell.vin !== undefined) return [];
    return [
      {
        message: 'No vehicle identification number yet: add `vin:` with the 17 characters of the chassis plate',
        ids: [shell.id],
        place: shell.source.place(),
      },
    ];
  },
};
