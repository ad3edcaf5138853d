import { judgeTest } from '../../compute/verdicts/verdict.js';
import type { Model } from '../../model/shell.js';
import type { Test } from '../../records/index.js';

/** The later test of the same kind that passed, of everything that this one was of. */
export function superseded(test: Test, model: Model): Test | undefined {
  return model.shell.tests.find(
    (other) =>
      other !== test &&
      other.testKind === test.testKind &&
      (other.date ?? '') >= (test.date ?? '') &&
      test.of.every((id) => other.of.includes(id)) &&
      judgeTest(other, model).verdict === 'passed',
  );
}
