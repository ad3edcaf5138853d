import type { Book } from '../book.js';
import { table } from '../table.js';

interface Event {
  readonly date: string;
  readonly id: string;
  readonly of: readonly string[];
  readonly what: string;
  readonly done: string;
}

/** Repairs, reworks and later changes in one list by date, newest first. */
export function repairsAnswer(book: Book) {
  const { shell } = book.assessment.model;
  const events: readonly Event[] = [
    ...shell.findings
      .filter((one) => one.decision !== 'use as is')
      .map((one) => ({
        date: one.raised,
        id: one.id,
        of: one.of,
        what: one.description,
        done: [one.decision ?? 'undecided', one.closed ? `closed ${book.show.date(one.closed)}` : 'open'].join(', '),
      })),
    ...shell.amendments.map((one) => ({
      date: one.date,
      id: one.id,
      of: one.changes,
      what: one.reason,
      done: 'changed after delivery',
    })),
  ];
  return table<Event>(book.show, {
    look: 'dense tight',
    rows: [...events].sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0)),
    columns: (c) => [
      c.text('Date', (one) => book.show.date(one.date)),
      c.refs('Record', (one) => [one.id]),
      c.refs(
        'Of',
        (one) => one.of.slice(0, MOST_IDS),
        (one) => (one.of.length > MOST_IDS ? `and ${one.of.length - MOST_IDS} more` : undefined),
      ),
      c.text('What', (one) => one.what),
      c.text('Done', (one) => one.done),
      c.page((one) => one.id),
    ],
    empty: 'No repair and no later change is recorded.',
  });
}
const MOST_IDS = 6;
