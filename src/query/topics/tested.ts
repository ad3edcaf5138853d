import { judgeTest } from '../../compute/verdicts/verdict.js';
import { facts, type Topic } from './topic.js';

export const tested: Topic = {
  name: 'tests',
  ask: 'find.tested',
  words: ['test', 'tests', 'tested', 'pressure', 'insulation', 'continuity'],
  answer({ model }) {
    const rows = model.shell.tests.map((test) => ({
      id: test.id,
      what: `${test.testKind} of ${test.of.slice(0, 6).join(', ')}${test.of.length > 6 ? ` and ${test.of.length - 6} more` : ''}`,
      facts: facts(
        ['read', test.measured?.text ?? (test.start && test.end ? `${test.start.text} to ${test.end.text}` : undefined)],
        ['limit', test.limit?.text],
        ['minutes', test.durationS === undefined ? undefined : Math.round(test.durationS / 6) / 10],
        ['date', test.date],
        ['by', test.by],
        ['verdict', judgeTest(test, model).verdict],
      ),
    }));
    return { rows, notes: rows.length === 0 ? ['No test is recorded.'] : ['Repeat a test at the values it was passed at.'] };
  },
};
