import { groupedDigits } from '../../signing/words.js';
import type { ChapterMaker } from '../book.js';
import { travelFacts } from '../overall.js';

/** Number, title, edition, revision, date, fingerprint and a drawing of this shell. */
export const cover: ChapterMaker = (book) => {
  const { shell, shop } = book.assessment.model;
  const { revision, revisionDate, tag } = book.history;
  const room = { widthMm: book.availableSize('portrait').widthMm, heightMm: 90 };
  const facts = [
    ...(book.edition === 'owner' ? travelFacts(book) : []),
    { name: 'Vehicle identification number', value: shell.vin ?? 'not recorded', mono: true },
    { name: 'Revision', value: revision ? revision.slice(0, 10) : 'not committed', mono: true },
    { name: 'Date of revision', value: revisionDate ? book.show.date(revisionDate) : 'none' },
    { name: 'Built by', value: [shop.name, shop.place].filter(Boolean).join(', ') },
    {
      name: 'State',
      value: [tag ? `closed as ${tag}` : 'not closed out', book.dirty && 'printed from records that are not committed']
        .filter(Boolean)
        .join('; '),
    },
    ...(shell.customer?.name
      ? [{ name: 'Built for', value: [shell.customer.name, shell.customer.place].filter(Boolean).join(', ') }]
      : []),
    { name: 'Fingerprint of the record in this edition (SHA-256)', value: book.fingerprint, mono: true },
    ...(book.signer
      ? [{ name: 'Signed with the shop’s key (SHA-256)', value: groupedDigits(book.signer.fingerprint), mono: true }]
      : []),
  ];
  return {
    key: 'cover',
    title: 'Cover',
    template: 'cover',
    bare: true,
    data: {
      shell: shell.id,
      title: shell.title,
      figure: book.draw.cover(book.assessment, room),
      facts,
      note: 'What is printed here is what was recorded. The last chapter says how to check that this copy is complete and genuine.',
    },
  };
};
