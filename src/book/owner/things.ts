import { placesOf } from '../../query/place.js';
import type { Book, ChapterMaker } from '../book.js';
import { recordTable } from '../record-table.js';
import { phrasesFor, readerFor, sentencesFor } from '../sentences.js';
import { table } from '../table.js';

/** Equipment with part and serial numbers, tanks, and the alloys. */
export const things: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  const phrase = phrasesFor(book);
  const { shell } = book.assessment.model;
  const places = placesOf(book.assessment.model, readerFor(book));
  return {
    key: 'equipment',
    title: w('equip.title'),
    template: 'owner-equipment',
    data: {
      components: recordTable(book, {
        rows: shell.components,
        columns: (c) => [
          c.id(w('head.id'), (one) => one.id),
          c.text(w('head.name'), (one) => one.name),
          c.text(w('equip.part'), (one) => [one.part, one.serial].filter(Boolean).join(', ')),
          c.text(w('head.where'), (one) => places(one.id)),
          c.mass(w('equip.weighs'), (one) => one.massKg),
        ],
        empty: w('word.none'),
      }),
      tanks: recordTable(book, {
        rows: shell.tanks,
        columns: (c) => [
          c.id(w('head.id'), (one) => one.id),
          c.text(w('head.what'), (one) => phrase(one.contents)),
          c.text(w('equip.holds'), (one) => book.show.volume(one.capacityM3)),
          c.mass(w('equip.full'), (one) => one.capacityM3 * one.densityKgM3),
          c.text(w('head.where'), (one) => places(one.id)),
        ],
        empty: w('word.none'),
      }),
      alloys: alloyTable(book),
    },
  };
};

function alloyTable(book: Book) {
  const w = sentencesFor(book);
  const { shell } = book.assessment.model;
  const members = new Set(shell.members.flatMap(({ alloy }) => alloy ?? []));
  const panels = new Set(shell.panels.flatMap(({ alloy }) => alloy ?? []));
  return table(book.show, {
    rows: [...new Set([...members, ...panels])].sort(),
    columns: (c) => [
      c.text(w('equip.alloy'), (alloy) => alloy),
      c.text(w('equip.used'), (alloy) =>
        [members.has(alloy) && w('equip.members'), panels.has(alloy) && w('equip.skins')].filter(Boolean).join(', '),
      ),
    ],
    empty: w('word.none'),
  });
}
