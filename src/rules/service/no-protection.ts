import { LAMP_RUN } from '../example-records.js';
import type { Rule } from '../rule.js';

export const noProtection: Rule = {
  name: 'service.no-protection',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'A DC or AC circuit without a fuse or breaker on record. Ground bonds (`bonding: yes`) need none.',
  why: 'Nobody can tell what to switch off before working on it, and an unprotected wire can start a fire.',
  source: 'common practice, no source; NEC 240 and 551 ask for the device itself (unverified citation)',
  examples: {
    given: `
${LAMP_RUN}
`,
    fails: `
  - {id: DC-1, voltage: 12 V, load: 5 A, conductor: {awg: 14}}
`,
    passes: `
  - {id: DC-1, voltage: 12 V, load: 5 A, protection: {kind: fuse, rating: 7.5 A, at: N1}, conductor: {awg: 14}}
`,
  },
  check({ model: { shell } }) {
    return shell.circuits
      .filter(
        ({ medium, protection, bonding }) =>
          (medium === 'dc' || medium === 'ac') && !bonding && protection?.ratingA === undefined,
      )
      .map((circuit) => ({
        message: circuit.protection
          ? `${circuit.id} has a ${circuit.protection.kind} without a rating, expected amperes: add \`rating: 15 A\``
          : `${circuit.id} has no protection on record, expected its fuse or breaker: add \`protection: {kind: fuse, rating: 15 A, at: …}\`, or \`bonding: yes\` where it is an earth bond`,
        ids: [circuit.id],
        place: circuit.source.place('protection'),
      }));
  },
};
