import type { PaintCoat, SparePart, Warranty } from '../../records/index.js';
import type { ChapterMaker } from '../book.js';
import { sentencesFor } from '../sentences.js';
import { table } from '../table.js';

/** Paint, parts, warranty, and who answers for what. */
export const papers: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  const { shell, shop } = book.assessment.model;
  const nameOf = (id: string): string | undefined => (shell.byId.get(id)?.record as { readonly name?: string } | undefined)?.name;
  return {
    key: 'papers',
    title: w('papers.title'),
    template: 'owner-papers',
    data: {
      paint: table<PaintCoat>(book.show, {
        look: 'tight',
        rows: shell.paint ?? [],
        columns: (c) => [
          c.text(w('head.where'), (one) => one.where),
          c.text(w('papers.code'), (one) => one.code),
          c.text(w('papers.system'), (one) => one.system),
          c.text(w('papers.lot'), (one) => one.lot),
        ],
        empty: w('word.none'),
      }),
      parts: table<SparePart>(book.show, {
        look: 'dense tight',
        rows: shell.parts ?? [],
        columns: (c) => [
          c.refs(
            w('papers.for'),
            (one) => [one.of],
            (one) => nameOf(one.of),
          ),
          c.text(w('head.what'), (one) => one.note),
          c.text(w('papers.number'), (one) => one.makerNumber),
          c.text(w('papers.supplier'), (one) => one.supplier),
        ],
        empty: w('word.none'),
      }),
      warranty: table<Warranty>(book.show, {
        look: 'tight',
        rows: shell.warranty ?? [],
        columns: (c) => [
          c.text(w('papers.covers'), (one) => one.of),
          c.text(w('papers.until'), (one) => book.show.date(one.until) || undefined),
          c.text(w('papers.by'), (one) => one.by),
          c.text(w('papers.terms'), (one) => one.terms),
        ],
        empty: w('papers.warranty.none'),
      }),
      shop: [shop.name, shop.place, shop.telephone, shop.contact].filter(Boolean).join(', '),
      dealer: w('papers.dealer', { vin: shell.vin ?? w('word.notrecorded') }),
      chassis: [shell.chassis.description, shell.chassis.document].filter(Boolean).join('; '),
    },
  };
};
