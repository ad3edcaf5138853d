import { concealed } from '../../query/concealment.js';
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
# zones.yaml
- {id: TC, name: belly trough, box: [[0 m, -0.5 m, 0 m], [4 m, 0.5 m, 0.3 m]], closed_by: [BP-1], drains: [[2.9 m, 0 m, 0 m]]}
# panels.yaml
- {id: BP-1, kind: belly, thickness: 2 mm, date: 2026-04-20, outline: [[0 m, -0.5 m, 0 m], [4 m, -0.5 m, 0 m], [4 m, 0.5 m, 0 m], [0 m, 0.5 m, 0 m]]}
# services/dc.yaml
service: Lights
medium: dc
circuits: [{id: DC-1, voltage: 12 V, protection: {kind: fuse, rating: 5 A, at: N1}, conductor: {awg: 14}}]
nodes:
  - {id: N1, kind: source, at: [-1 m, 0 m, 0.15 m], tolerance: 10 mm}
  - {id: N2, kind: load, at: [5 m, 0 m, 0.15 m], tolerance: 10 mm}
runs:
  - {id: DC-1/1, circuit: DC-1, from: N1, to: N2, zones: [TC], tolerance: 10 mm}
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
