import { judgeTest } from '../../compute/verdicts/verdict.js';
import type { Model } from '../../model/shell.js';
import { dayOf } from '../../quantity/day.js';
import type { Nonconformance } from '../../records/index.js';
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
  examples: {
    given: `
# members.yaml
- {id: A, section: RT4x2, alloy: 6061-T6, from: [0 m, 0 m, 0 m], to: [2 m, 0 m, 0 m], stage: floor}
- {id: B, section: RT4x2, alloy: 6061-T6, from: [1 m, 25.4 mm, 0 m], to: [1 m, 1 m, 0 m], stage: floor}
# welds.yaml
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
# findings.yaml
`,
    fails: `
- {id: NC-1, raised: 2026-04-02, of: [A], description: a dent, decision: rework, approved_by: J2, closed: 2026-04-10}
`,
    passes: `
- {id: NC-1, raised: 2026-04-02, of: [A], description: a dent, decision: rework, approved_by: J2, closed: 2026-04-10}
# pictures
shells/X-1/photos/a.jpg: {sha256: ab}
# photos/photos.yaml
- {id: P-1, file: a.jpg, of: [A], taken: 2026-04-09}
`,
  },
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
