import { VIN_FORM, vinCheckDigit } from '../../records/vin.js';
import type { Rule } from '../rule.js';

/** First characters of North American makers, where the digit is the law (49 CFR 565); elsewhere ISO 3779 leaves it free. The letters are (unverified citation). */
const NORTH_AMERICAN = /^[1-57]/u;

export const vinCheckDigitRule: Rule = {
  name: 'shell.vin-check-digit',
  severity: 'error',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'A vehicle identification number whose check digit (position 9) does not follow from the others. A warning where the maker is not North American.',
  why: 'One mistyped or exchanged character makes it another vehicle.',
  source: '49 CFR 565.15(c)',
  examples: {
    given: `
# shell.yaml
`,
    fails: `
shell: X-1
title: Example coach
vin: 1Z9FBV5T7Z0418012
`,
    passes: `
shell: X-1
title: Example coach
vin: 1Z9FBV5T7Z0418021
`,
  },
  check({ model: { shell } }) {
    const { vin } = shell;
    if (vin === undefined || !VIN_FORM.test(vin)) return [];
    const digit = vinCheckDigit(vin);
    if (vin[8] === digit) return [];
    return [
      {
        severity: NORTH_AMERICAN.test(vin) ? 'error' : 'warning',
        message: `Found the check digit \`${vin[8]}\` in position 9 of \`${vin}\`, expected \`${digit}\` for these characters: read the number again from the chassis plate`,
        ids: [shell.id],
        place: shell.source.place('vin'),
      },
    ];
  },
};
