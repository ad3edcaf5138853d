import type { Rule } from '../rule.js';

export const gvwrMissing: Rule = {
  name: 'shell.gvwr-missing',
  severity: 'warning',
  asks: 'missing',
  duty: 'administrator',
  finds: 'A chassis whose gross vehicle weight rating is not recorded. A note while it has no axles either.',
  why: 'The total then has nothing to be judged by, and the cargo capacity cannot be given.',
  source:
    '49 CFR 567.5(d) for a body on an incomplete vehicle, 567.4(g)(3) for a vehicle of one maker; the incomplete vehicle document, 49 CFR 568.4 (unverified citation)',
  examples: {
    given: `
# shell.yaml
shell: X-1
title: Example coach
chassis:
  axles: [{id: steer, x: 0 m, gawr: 5000 kg}, {id: drive, x: 5 m, gawr: 9000 kg}]
`,
    fails: `
# nothing says what the whole may weigh
`,
    passes: `
  gvwr: 12000 kg
`,
  },
  check({ model: { shell } }) {
    const { gvwrKg, axles } = shell.chassis;
    if (gvwrKg !== undefined) return [];
    return [
      {
        severity: axles.length > 0 ? 'warning' : 'note',
        message: 'No gross vehicle weight rating: add `chassis: gvwr:` from the incomplete vehicle document, as `gvwr: 54000 lb`',
        ids: [shell.id],
        place: shell.source.place('chassis', 'gvwr'),
      },
    ];
  },
};
