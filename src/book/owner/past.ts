import { groupedDigits } from '../../signing/words.js';
import { type ChapterMaker, stageName } from '../book.js';
import { sentencesFor } from '../sentences.js';
import { table } from '../table.js';

/** Later changes, what the next owner needs, and whether this copy is genuine. */
export const past: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  const { shell, shop } = book.assessment.model;
  const { revision, tag } = book.history;
  return {
    key: 'changes',
    title: w('past.title'),
    template: 'owner-past',
    data: {
      changes: table(book.show, {
        rows: [...shell.amendments].sort((a, b) => (a.date < b.date ? -1 : 1)),
        home: (one) => one.id,
        columns: (c) => [
          c.id(w('head.id'), (one) => one.id),
          c.text(w('past.date'), (one) => book.show.date(one.date)),
          c.text(w('past.why'), (one) => one.reason),
          c.refs(w('past.of'), (one) => one.changes),
        ],
        empty: w('past.none'),
      }),
      signed: table(book.show, {
        look: 'dense tight',
        rows: shell.signoffs.filter(({ id }) => book.standings.has(id)),
        columns: (c) => [
          c.text(w('past.stage'), (one) => stageName(book, one.stage)),
          c.text(w('past.date'), (one) => book.show.date(one.date)),
          c.text(w('past.state'), (one) => w(`past.stands.${book.standings.get(one.id) ?? 'not verified'}`)),
        ],
        empty: w('past.none'),
      }),
      shop: shop.name,
      shell: shell.id,
      rows: Array.from({ length: 4 }, (_, i) => i),
      facts: [
        { name: w('past.revision'), value: revision ? revision.slice(0, 10) : w('past.uncommitted') },
        ...(tag ? [{ name: w('past.tag'), value: tag }] : []),
        { name: w('past.fingerprint'), value: book.fingerprint },
        ...(book.signer ? [{ name: w('past.key'), value: groupedDigits(book.signer.fingerprint) }] : []),
      ],
      withKey: book.signer !== undefined,
    },
  };
};
