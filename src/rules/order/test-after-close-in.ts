import { concealed } from '../../query/concealment.js';
import { CONCEALED_RUN } from '../example-records.js';
import type { Rule } from '../rule.js';
import { evidenceOf, firstTooLate, lineName, testDay } from './evidence.js';

export const testAfterCloseIn: Rule = {
  name: 'order.test-after-close-in',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A concealed run or joint whose every passed test was made after the panel that closes it went on.',
  why: 'Test before cover: a leak found behind a bonded panel costs the panel.',
  source: 'common practice, no source',
  examples: {
    given: `
${CONCEALED_RUN}
# tests.yaml
`,
    fails: `
- {id: TS-1, kind: insulation, of: [DC-1], limit: 1 Mohm, measured: 50 Mohm, instrument: IR-1, date: 2026-04-23}
`,
    passes: `
- {id: TS-1, kind: insulation, of: [DC-1], limit: 1 Mohm, measured: 50 Mohm, instrument: IR-1, date: 2026-04-17}
`,
  },
  check({ model }) {
    return concealed(model).flatMap((item) => {
      if (!item.closed) return [];
      const { date, panel } = item.closed;
      const { tests, needsTest } = evidenceOf(item, model);
      const late = firstTooLate(tests.map(testDay), date);
      const test = tests.find((one) => late !== undefined && testDay(one) === late);
      if (!needsTest || !test) return [];
      return [
        {
          message: `${lineName(item)} first passed a test on ${late} (${test.id}), expected on or before ${date}, when ${panel} closed it in: decide it in findings.yaml, with what makes the late test enough`,
          ids: [item.record.id, test.id, panel],
          place: test.source.place('date'),
        } as const,
      ];
    });
  },
};
