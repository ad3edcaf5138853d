import type { Model } from '../../model/shell.js';
import { dayOf } from '../../quantity/day.js';
import type { RecordBase } from '../../records/index.js';
import type { Rule } from '../rule.js';

/** Records named in a message; the ids have all of them. */
const SHOWN = 5;

export const beforeBuild: Rule = {
  name: 'record.before-build',
  severity: 'note',
  asks: 'defect',
  duty: 'administrator',
  finds: 'Tests, openings, bonded panels and photos dated before the first weld of the shell. One note for all of them.',
  why: 'There was nothing to test or to measure yet: the date was left over from another shell, or is a slip of the year.',
  source: 'common practice, no source',
  examples: {
    given: `
# members.yaml
- {id: A, section: RT4x2, alloy: 6061-T6, from: [0 m, 0 m, 0 m], to: [2 m, 0 m, 0 m], stage: floor}
- {id: B, section: RT4x2, alloy: 6061-T6, from: [1 m, 25.4 mm, 0 m], to: [1 m, 1 m, 0 m], stage: floor}
# welds.yaml
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
# tests.yaml
`,
    fails: `
- {id: TS-1, kind: drop, of: [X-1], limit: 1 psi, measured: 0.5 psi, instrument: PG-1, date: 2026-02-02}
`,
    passes: `
- {id: TS-1, kind: drop, of: [X-1], limit: 1 psi, measured: 0.5 psi, instrument: PG-1, date: 2026-04-02}
`,
  },
  check({ model }) {
    const begun = firstWeld(model);
    if (begun === undefined) return [];
    const early = dated(model).filter(({ day }) => dayOf(day) < begun);
    const [first] = early;
    if (!first) return [];
    const more = early.length > SHOWN ? ` and ${early.length - SHOWN} more` : '';
    const named = early.slice(0, SHOWN).map(({ record, day }) => `${record.id} (${day})`);
    return [
      {
        message: `Dated before the first weld of this shell (${begun}): ${named.join(', ')}${more}, expected a day of the build: correct the date, or say in a \`note\` what was done before it`,
        ids: early.map(({ record }) => record.id),
        place: first.record.source.place('date'),
      },
    ];
  },
};

const firstWeld = ({ shell }: Model): string | undefined =>
  shell.welds
    .flatMap(({ date }) => dayOf(date) ?? [])
    .sort()
    .at(0);

function dated({ shell }: Model): readonly { readonly record: RecordBase; readonly day: string }[] {
  const of = (record: RecordBase, day: string | undefined) => (day === undefined ? [] : [{ record, day }]);
  return [
    ...shell.tests.flatMap((test) => of(test, test.date)),
    ...shell.openings.flatMap((opening) => of(opening, opening.date)),
    ...shell.panels.flatMap((panel) => of(panel, panel.fixing?.applied)),
    // A picture of the chassis as it came is no mistake.
    ...shell.photos.flatMap((photo) => (photo.of.length > 0 ? of(photo, photo.taken) : [])),
  ];
}
