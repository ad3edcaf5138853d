import type { Amendment, Nonconformance, Shell, Weld } from '../records/index.js';

/** One thing that was put right, allowed or changed, and the record that says so. */
export interface Repair {
  /** ISO 8601 day: when it was raised, rejected or changed. */
  readonly date: string;
  readonly id: string;
  readonly of: readonly string[];
  /** What was wrong, or why it was changed. */
  readonly what: string;
  /** What was done, piece by piece; a day stands by itself, for each reader to write it. */
  readonly done: readonly (string | { readonly said: 'closed' | 'accepted'; readonly day: string })[];
}

const DONE = { rework: 'reworked', repair: 'repaired', 'use as is': 'left as it is', reject: 'rejected' } as const;

/** Repairs, welds run again, deviations and later changes from every record in one list by date, newest first. */
export function repairsOf({ findings, welds, amendments }: Pick<Shell, 'findings' | 'welds' | 'amendments'>): readonly Repair[] {
  const told = new Set(findings.flatMap(({ of }) => of));
  const all = [
    ...findings.map(asDecided),
    // Unless a finding tells of the same weld already.
    ...welds.filter(({ id }) => !told.has(id)).flatMap(reworkOf),
    ...amendments.map(asChange),
  ];
  return all.sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0));
}

const asDecided = ({ id, raised, of, description, decision, reason, closed }: Nonconformance): Repair => ({
  date: raised,
  id,
  of,
  what: description,
  done: [
    decision === undefined ? 'not decided' : DONE[decision],
    ...(reason ? [reason] : []),
    closed ? { said: 'closed', day: closed } : 'still open',
  ],
});

/** A weld that an inspector rejected, or looked at as one that was repaired. */
function reworkOf({ id, joins, inspections }: Weld): readonly Repair[] {
  const rejects = inspections.filter(({ result }) => result === 'reject');
  const [first = inspections.find(({ repair = 0 }) => repair > 0)] = rejects;
  if (!first) return [];
  const accepted = inspections.filter(({ result, date }) => result === 'accept' && date >= first.date).at(-1);
  return [
    {
      date: first.date,
      id,
      of: [...new Set(joins.flat())],
      what:
        rejects.map(({ reason }) => reason ?? 'rejected, reason not recorded').join('; then ') || 'repaired, reason not recorded',
      done: accepted ? ['welded again', { said: 'accepted', day: accepted.date }] : ['no later accept recorded: not proved'],
    },
  ];
}

const asChange = ({ id, date, changes, reason }: Amendment): Repair => ({
  date,
  id,
  of: changes,
  what: reason,
  done: ['changed after delivery'],
});

/** What was done in one line. `day` writes a day as its reader does. */
export const doneWords = ({ done }: Repair, day: (date: string) => string): string =>
  done.map((one) => (typeof one === 'string' ? one : `${one.said} ${day(one.day)}`)).join('; ');
