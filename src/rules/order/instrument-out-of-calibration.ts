import { calibrationLapse } from '../../compute/verdicts/calibration.js';
import type { Rule } from '../rule.js';

export const instrumentOutOfCalibration: Rule = {
  name: 'order.instrument-out-of-calibration',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A test taken with an instrument outside its calibration dates, or without a due date. (Scales: weight.scale-out-of-calibration.)',
  why: 'What it showed that day is not evidence, so the test does not pass.',
  source: 'ISO 9001:2015 clause 7.1.5.2',
  examples: {
    given: `
# tests.yaml
`,
    fails: `
- {id: TS-1, kind: insulation, of: [X-1], limit: 1 Mohm, measured: 50 Mohm, instrument: IR-1, date: 2027-01-02}
`,
    passes: `
- {id: TS-1, kind: insulation, of: [X-1], limit: 1 Mohm, measured: 50 Mohm, instrument: IR-1, date: 2027-01-01}
`,
  },
  check({ model: { shell, library } }) {
    return shell.tests.flatMap((test) => {
      const instrument = test.instrument === undefined ? undefined : library.instruments.get(test.instrument);
      const lapse = instrument && calibrationLapse(instrument, test.date);
      if (!lapse) return [];
      return [
        {
          message: `Test ${test.id} of ${test.date}: ${lapse}, expected a calibration that covers that day: repeat the test, or correct the dates in library/instruments.yaml`,
          ids: [test.id, instrument.id],
          place: test.source.place('instrument'),
          related: [{ message: `Instrument ${instrument.id}`, place: instrument.source.place('due') }],
        } as const,
      ];
    });
  },
};
