import { blocking, openItems } from '../../closeout/items.js';
import type { Book, ChapterMaker } from '../book.js';
import { careDue } from '../owner/keep.js';
import { table } from '../table.js';
import { photoHeadline } from './photo-gaps.js';

/** Shop edition: what is open, what runs out, what was let pass, which pictures are missing, and who must act. */
export const whatIsOpen: ChapterMaker = (book) => {
  const { model, findings } = book.assessment;
  const items = openItems({ model, findings });
  return {
    key: 'open',
    title: 'What is open',
    template: 'open',
    front: true,
    data: {
      blocking: blocking(items).length,
      items: itemTable(book, items),
      runsOut: expiryTable(book),
      passed: passedTable(book),
      photos: photoHeadline(book),
      missing: book.photos.all.flatMap(({ photo, missing }) => (missing ? [{ id: photo.id, why: missing }] : [])),
    },
  };
};

const GRADE = { A: 'before sign-off', B: 'before close', C: 'travels with the shell' } as const;

const itemTable = (book: Book, items: ReturnType<typeof openItems>) =>
  table(book.show, {
    look: 'dense tight',
    rows: items,
    group: (one) => GRADE[one.grade],
    columns: (c) => [
      c.text('Who must act', (one) => one.who),
      c.text('Where', (one) => one.where),
      c.refs('Records', (one) => one.ids.slice(0, MOST_IDS)),
      c.text('What', (one) => one.message),
      c.text('Because of', (one) => one.because),
    ],
    empty: 'Nothing is open.',
  });
const MOST_IDS = 4;

interface Expiry {
  readonly date: string;
  readonly what: string;
  readonly who: string;
}

/** Gauges, cards of welders and inspectors, warranties and care, by date. */
function expiryTable(book: Book) {
  const { library, shell } = book.assessment.model;
  const rows: readonly Expiry[] = [
    ...[...library.instruments.values()].flatMap(({ id, due }) =>
      due ? [{ date: due, what: `calibration of ${id}`, who: 'shop' }] : [],
    ),
    ...[...library.people.values()].flatMap(({ id, name, qualified }) =>
      qualified.flatMap(({ until, process, method }) =>
        until ? [{ date: until, what: `card of ${id}, ${process ?? method ?? 'qualification'}`, who: name }] : [],
      ),
    ),
    ...(shell.warranty ?? []).flatMap(({ of, until, by }) =>
      until ? [{ date: until, what: `warranty: ${of}`, who: by ?? '' }] : [],
    ),
    ...(shell.care ?? []).flatMap((one) => {
      const due = careDue(one);
      return due ? [{ date: due, what: `care: ${one.what}`, who: 'owner' }] : [];
    }),
  ];
  return table<Expiry>(book.show, {
    look: 'dense tight',
    rows: [...rows].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0)),
    columns: (c) => [
      c.text('On', (one) => book.show.date(one.date)),
      c.text('What', (one) => one.what),
      c.text('Who', (one) => one.who),
    ],
    empty: 'Nothing on record runs out.',
  });
}

/** Deviations that were let pass. */
const passedTable = (book: Book) =>
  table(book.show, {
    look: 'dense tight',
    rows: book.assessment.model.shell.findings.filter(({ decision }) => decision === 'use as is'),
    columns: (c) => [
      c.refs('Finding', (one) => [one.id]),
      c.refs('Of', (one) => one.of),
      c.text('What', (one) => one.description),
      c.text('Why it may stay', (one) => one.reason),
      c.page((one) => one.id),
    ],
    empty: 'No deviation was let pass.',
  });
