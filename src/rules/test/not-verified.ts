import { judgeTest } from '../../compute/verdicts/verdict.js';
import type { Rule } from '../rule.js';
import { superseded } from './superseded.js';

export const testNotVerified: Rule = {
  name: 'test.not-verified',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds:
    'A test whose evidence is too weak to pass: no value, no limit, no instrument, a gauge too coarse, a temperature that moved or was not read.',
  why: 'A 200 psi gauge shows a 3 psi test as passed whatever leaks. A check without evidence is not verified; it never passes.',
  source: 'common practice, no source',
  examples: {
    given: `
# tests.yaml
`,
    fails: `
- {id: TS-1, kind: drop, of: [X-1], limit: 1 psi, measured: 0.5 psi, date: 2026-04-02}
`,
    passes: `
- {id: TS-1, kind: drop, of: [X-1], limit: 1 psi, measured: 0.5 psi, instrument: PG-1, date: 2026-04-02}
`,
  },
  check({ model }) {
    return model.shell.tests.flatMap((test) => {
      const figure = judgeTest(test, model);
      // A lapsed calibration is told by order.instrument-out-of-calibration.
      if (figure.verdict !== 'not verified' || figure.lapsed || superseded(test, model)) return [];
      return [
        {
          message: `Test ${test.id} (${test.testKind}) of ${test.of.join(', ')} is not verified: ${figure.reason}`,
          ids: [test.id, ...test.of],
          place: test.source.place(),
        } as const,
      ];
    });
  },
};
