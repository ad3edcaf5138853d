import { judgeTest } from '../../compute/verdicts/verdict.js';
import type { Rule } from '../rule.js';
import { superseded } from './superseded.js';
import { valueAndLimit } from './text.js';

export const failed: Rule = {
  name: 'test.failed',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A test whose values are past its limit, with no later test of the same kind that passes. A note where there is one.',
  why: 'The values decide, not a word typed beside them. A failed test stays on record beside the one that passed after the repair.',
  source: 'the limit on record; gas drop corrected for temperature by the gas law',
  examples: {
    given: `
# tests.yaml
`,
    fails: `
- {id: TS-1, kind: drop, of: [X-1], limit: 1 psi, measured: 3 psi, instrument: PG-1, date: 2026-04-02}
`,
    passes: `
- {id: TS-1, kind: drop, of: [X-1], limit: 1 psi, measured: 0.5 psi, instrument: PG-1, date: 2026-04-02}
`,
  },
  check({ model }) {
    return model.shell.tests.flatMap((test) => {
      const figure = judgeTest(test, model);
      if (figure.verdict !== 'failed') return [];
      const later = superseded(test, model);
      const then = later ? `; ${later.id} passed later` : ': repair it, test it again, and record the new test beside this one';
      return [
        {
          severity: later ? 'note' : 'error',
          message: `Test ${test.id} (${test.testKind}) of ${test.of.join(', ')} has ${valueAndLimit(test, figure, model.shop.units)}${then}`,
          ids: [test.id, ...test.of, ...(later ? [later.id] : [])],
          place: test.source.place(test.measured ? 'measured' : 'end'),
        } as const,
      ];
    });
  },
};
