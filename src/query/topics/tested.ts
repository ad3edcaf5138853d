import { judgeTest } from '../../compute/verdicts/verdict.js';
import { unitSigns } from '../../quantity/format.js';
import type { Test } from '../../records/index.js';
import { facts, type Topic } from './topic.js';

/** What was read, or where it began and ended: `42 MΩ`, `100 psi to 91 psi`. */
export function readingWords({ measured, start, end }: Pick<Test, 'measured' | 'start' | 'end'>): string | undefined {
  const text = measured?.text ?? (start && end ? `${start.text} to ${end.text}` : undefined);
  return text === undefined ? undefined : unitSigns(text);
}

export const tested: Topic = {
  name: 'tests',
  ask: 'find.tested',
  words: ['test', 'tests', 'tested', 'pressure', 'insulation', 'continuity'],
  answer({ model }) {
    const rows = model.shell.tests.map((test) => ({
      id: test.id,
      what: `${test.testKind} of ${test.of.slice(0, 6).join(', ')}${test.of.length > 6 ? ` and ${test.of.length - 6} more` : ''}`,
      facts: facts(
        ['read', readingWords(test)],
        ['limit', test.limit && unitSigns(test.limit.text)],
        ['minutes', test.durationS === undefined ? undefined : Math.round(test.durationS / 6) / 10],
        ['date', test.date],
        ['by', test.by],
        ['verdict', judgeTest(test, model).verdict],
      ),
    }));
    return { rows, notes: rows.length === 0 ? ['No test is recorded.'] : ['Repeat a test at the values it was passed at.'] };
  },
};
