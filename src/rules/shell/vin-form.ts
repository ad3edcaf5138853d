import { VIN_FORM } from '../../records/vin.js';
import type { Rule } from '../rule.js';

export const vinForm: Rule = {
  name: 'shell.vin-form',
  severity: 'error',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A vehicle identification number that is not 17 characters long, or has I, O, Q or a sign that never occurs in one.',
  why: 'A letter O for a zero points every later search, recall and warranty claim at another vehicle.',
  source: '49 CFR 565.13; ISO 3779',
  examples: {
    given: `
# shell.yaml
`,
    fails: `
shell: X-1
title: Example coach
vin: 1Z9FBV5T7ZO418021
`,
    passes: `
shell: X-1
title: Example coach
vin: 1Z9FBV5T7Z0418021
`,
  },
  check({ model: { shell } }) {
    const { vin } = shell;
    if (vin === undefined || VIN_FORM.test(vin)) return [];
    return [
      {
        message: `Found \`vin: ${vin}\` (${fault(vin)}), expected 17 characters of A–Z and 0–9 without I, O and Q: read it again from the chassis plate`,
        ids: [shell.id],
        place: shell.source.place('vin'),
      },
    ];
  },
};

function fault(vin: string): string {
  const length = [...vin].length;
  if (length !== 17) return `${length} characters`;
  const wrong = /[^A-HJ-NPR-Z0-9]/u.exec(vin)?.[0] ?? '';
  return `\`${wrong}\` in position ${vin.indexOf(wrong) + 1}`;
}
