import { groupedDigits } from '../../signing/words.js';
import type { ChapterMaker } from '../book.js';
import { travelSizes } from '../owner/road.js';
import { sentencesFor } from '../sentences.js';

/** Number, title, edition, revision, date, fingerprint and a drawing of this shell. */
export const cover: ChapterMaker = (book) => {
  const { shell, shop } = book.assessment.model;
  const { revision, revisionDate, tag } = book.history;
  const owner = book.edition === 'owner';
  const w = sentencesFor(book);
  const room = { widthMm: book.availableSize('portrait').widthMm, heightMm: 90 };
  const facts = [
    ...(owner ? travelSizes(book).slice(0, 3) : []),
    { name: w('cover.vin'), value: shell.vin ?? w('word.notrecorded'), mono: true },
    { name: w('past.revision'), value: revision ? revision.slice(0, 10) : w('past.uncommitted'), mono: true },
    { name: w('cover.date'), value: revisionDate ? book.show.date(revisionDate) : '–' },
    { name: w('cover.by'), value: [shop.name, shop.place].filter(Boolean).join(', ') },
    {
      name: w('cover.state'),
      value: [tag ? w('cover.closed', { tag }) : w('cover.open'), book.dirty && w('cover.dirty')].filter(Boolean).join('; '),
    },
    ...(shell.customer?.name
      ? [{ name: w('cover.for'), value: [shell.customer.name, shell.customer.place].filter(Boolean).join(', ') }]
      : []),
    { name: w('cover.print'), value: book.fingerprint, mono: true },
    ...(book.signer ? [{ name: w('cover.key'), value: groupedDigits(book.signer.fingerprint), mono: true }] : []),
  ];
  return {
    key: 'cover',
    title: w('cover.title'),
    template: 'cover',
    bare: true,
    data: {
      notice: shop.notice,
      kind: owner ? w('book.cover', { edition: book.editionName }) : `As-built book · ${book.editionName}`,
      shell: shell.id,
      title: shell.title,
      figure: book.draw.cover(book.assessment, room),
      facts,
      note: w('cover.note'),
    },
  };
};
