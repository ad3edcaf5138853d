import { judgeTest } from '../../compute/verdicts/verdict.js';
import type { Model, Nonconformance } from '../../model/shell.js';
import { dayOf } from '../../quantity/day.js';
import type { Rule } from '../rule.js';

export const noReinspection: Rule = {
  name: 'finding.no-reinspection',
  severity: 'warning',
  asks: 'missing',
  duty: 'inspector',
  finds:
    'A rework or repair closed without an accepted inspection, a passed test, a new measurement or a photo after the finding was raised.',
  why: '"Fixed" is a word; the second look is the evidence.',
  source: 'ISO 9001:2015 clause 8.7.1 (conformity is verified when nonconforming outputs are corrected)',
  check({ model }) {
    return model.shell.findings.flatMap((record) => {
      const reworked = record.decision === 'rework' || record.decision === 'repair';
      if (!reworked || record.closed === undefined || lookedAtAgain(record, model)) return [];
      return [
        {
          message: `Finding ${record.id} was closed on ${record.closed} after ${record.decision} of ${record.of.join(', ')}, expected an accepted inspection, a passed test or a photo on or after ${record.raised}: record the second look`,
          ids: [record.id, ...record.of],
          place: record.source.place('closed'),
        } as const,
      ];
    });
  },
};

function lookedAtAgain(record: Nonconformance, model: Model): boolean {
  const { shell } = model;
  const ids = new Set(record.of);
  const since = (date: string | undefined): boolean => date !== undefined && dayOf(date) >= dayOf(record.raised);
  const names = new Set(record.photos);
  return (
    shell.welds.some((weld) => ids.has(weld.id) && weld.inspections.some((one) => one.result === 'accept' && since(one.date))) ||
    shell.tests.some(
      (test) => test.of.some((id) => ids.has(id)) && since(test.date) && judgeTest(test, model).verdict === 'passed',
    ) ||
    shell.openings.some((opening) => ids.has(opening.id) && since(opening.date)) ||
    shell.photos.some((photo) => (names.has(photo.id) || photo.of.some((id) => ids.has(id))) && since(photo.taken ?? photo.date))
  );
}
