import { type LateEntry, lateEntries } from '../../compute/record/late-entries.js';
import { number } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

/** Records named in a message; the ids have all of them. */
const SHOWN = 5;

export const lateEntry: Rule = {
  name: 'record.late-entry',
  severity: 'note',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'Records that came into Git more days after their event than the shop allows (a week unless set). One note for each day of entry.',
  why: 'What is written down weeks later is written (unverified citation), or after somebody asked for it.',
  source: 'limit `late_entry` in shop.yaml; common practice, no source',
  examples: {
    given: `
# members.yaml
- {id: A, section: RT4x2, alloy: 6061-T6, from: [0 m, 0 m, 0 m], to: [2 m, 0 m, 0 m], stage: floor}
- {id: B, section: RT4x2, alloy: 6061-T6, from: [1 m, 25.4 mm, 0 m], to: [1 m, 1 m, 0 m], stage: floor}
# welds.yaml
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
# git
`,
    fails: `
entered: {W-1: 2026-05-01}
`,
    passes: `
entered: {W-1: 2026-03-04}
`,
  },
  check({ model: { shell, shop }, outside }) {
    if (!outside?.entered) return [];
    const { lateEntryDays } = shop.limits;
    return byEntry(lateEntries(shell, outside.entered, lateEntryDays)).map((late) => {
      const [first] = late as readonly [LateEntry, ...LateEntry[]];
      const events = late.map(({ event }) => event).sort();
      const most = Math.max(...late.map(({ days }) => days));
      const span = events[0] === events.at(-1) ? `of ${events[0]}` : `of ${events[0]} to ${events.at(-1)}`;
      const more = late.length > SHOWN ? ` and ${late.length - SHOWN} more` : '';
      const named = late.slice(0, SHOWN).map(({ record }) => record.id);
      return {
        message: `${named.join(', ')}${more} ${span} came into Git on ${first.entered}, ${late.length === 1 ? '' : 'up to '}${most} days later, expected within ${number(lateEntryDays)} days: say in a \`note\` from what they were written`,
        ids: late.map(({ record }) => record.id),
        place: first.record.source.place('date'),
      } as const;
    });
  },
};

function byEntry(late: readonly LateEntry[]): readonly (readonly LateEntry[])[] {
  const groups = new Map<string, LateEntry[]>();
  for (const one of late) groups.set(one.entered, [...(groups.get(one.entered) ?? []), one]);
  return [...groups.values()];
}
