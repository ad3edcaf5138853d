import type { Rule } from '../rule.js';

export const vinTwice: Rule = {
  name: 'record.vin-twice',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A vehicle identification number that another shell, begun earlier, has as well.',
  why: 'A number belongs to one vehicle for life: the second was left over from the file that was copied.',
  source: '49 CFR 565 (no two vehicles have the same number within 60 years), unverified citation',
  examples: {
    given: `
# shell.yaml
shell: X-1
title: Example coach
vin: 1Z9FBV5T7Z0418021
# shells/X-0/shell.yaml
shell: X-0
title: An earlier coach
# shells/X-0/welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, date: 2025-01-01}
# shells/X-0/shell.yaml
shell: X-0
title: An earlier coach
vin: 1Z9FBV5T7Z0418021
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, date: 2025-01-01}
`,
  },
  check({ model: { shell, elsewhere } }) {
    if (shell.vin === undefined || !elsewhere) return [];
    const [other] = elsewhere.withVin(shell.vin).filter((one) => !elsewhere.beganBefore(one));
    if (other === undefined) return [];
    return [
      {
        message: `VIN ${shell.vin} is that of ${other} too, expected one of its own: read it off this chassis and correct \`vin\``,
        ids: [shell.id],
        place: shell.source.place('vin'),
      },
    ];
  },
};
