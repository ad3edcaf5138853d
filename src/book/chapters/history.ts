import { groupedDigits } from '../../signing/words.js';
import { type Book, type ChapterMaker, personName, stageName } from '../book.js';
import { table } from '../table.js';

/** Revisions, amendments, sign-offs, fingerprint, how to verify and how to get the records back. */
export const history: ChapterMaker = (book) => ({
  key: 'history',
  title: 'History and proof',
  template: 'history',
  data: { ...proof(book), commits: commitTable(book), amendments: amendmentTable(book), signoffs: signoffTable(book) },
});

export function proof(book: Book) {
  return {
    revision: book.history.revision,
    short: book.history.revision?.slice(0, 10),
    dirty: book.dirty,
    tag: book.history.tag,
    fingerprint: book.fingerprint,
    ...(book.signer ? { signedBy: book.signer.name, key: groupedDigits(book.signer.fingerprint) } : {}),
    shell: book.assessment.model.shell.id,
  };
}

function commitTable(book: Book) {
  return table<History>(book.show, {
    look: 'dense tight',
    rows: book.history.commits,
    columns: (c) => [
      c.id(
        'Revision',
        (one) => one.hash.slice(0, 10),
        (one) => one.tag,
      ),
      c.text('Date', (one) => book.show.date(one.date)),
      ...(book.edition === 'shop' ? [c.text('By', (one) => one.author)] : []),
      c.text('What was recorded', (one) => one.message),
    ],
    empty: 'The record was never committed: it has no history.',
  });
}
type History = Book['history']['commits'][number];

function amendmentTable(book: Book) {
  return table(book.show, {
    rows: book.assessment.model.shell.amendments,
    home: (one) => one.id,
    columns: (c) => [
      c.id(
        'Amendment',
        (one) => one.id,
        (one) => book.show.date(one.date),
      ),
      c.text(
        'Why',
        (one) => one.reason,
        (one) => one.note,
      ),
      c.refs('What changed', (one) => one.changes),
      c.text('By', (one) => personName(book, one.by)),
    ],
    empty: 'Nothing was amended after close-out.',
  });
}

function signoffTable(book: Book) {
  return table(book.show, {
    rows: book.assessment.model.shell.signoffs,
    home: (one) => one.id,
    columns: (c) => [
      c.text('Stage', (one) => stageName(book, one.stage)),
      c.text('Signed as', (one) => one.role),
      c.text(
        'By',
        (one) => personName(book, one.by),
        (one) => (one.enteredBy === undefined ? undefined : `typed by ${personName(book, one.enteredBy)}`),
      ),
      c.text('Date', (one) => book.show.date(one.date)),
      c.id('Of (digest)', (one) => one.digest?.slice(0, 16)),
      c.text('Stands', (one) => book.standings.get(one.id) ?? 'signed again'),
    ],
    empty: 'No stage is signed off.',
  });
}
