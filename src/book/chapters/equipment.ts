import type { ChapterMaker } from '../book.js';
import { recordTable } from '../record-table.js';
import { placeColumn } from '../where.js';

/** Generator, batteries, tanks, slides and fit-out: where, how heavy, how well that is known. */
export const equipment: ChapterMaker = (book) => {
  const { shell } = book.assessment.model;
  return {
    key: 'equipment',
    title: 'Equipment and tanks',
    template: 'equipment',
    data: {
      components: recordTable(book, {
        rows: shell.components,
        columns: (c) => [
          c.id('Id', (one) => one.id),
          c.text(
            'Name',
            (one) => one.name,
            (one) => [one.part && `part ${one.part}`, one.serial && `serial ${one.serial}`, one.note].filter(Boolean).join(', '),
          ),
          placeColumn(
            book,
            'Where',
            (one) => one.at,
            (one) => one.id,
          ),
          c.mass('Mass', (one) => one.massKg),
          c.text('Mass is', (one) => one.basis),
        ],
        empty: 'No equipment is recorded.',
      }),
      tanks: recordTable(book, {
        rows: shell.tanks,
        columns: (c) => [
          c.id('Tank', (one) => one.id),
          c.text('Contents', (one) => one.contents),
          c.text('Capacity', (one) => book.show.volume(one.capacityM3)),
          c.mass('Full', (one) => one.capacityM3 * one.densityKgM3),
          placeColumn(
            book,
            'Where',
            (one) => one.at,
            (one) => one.id,
          ),
        ],
        empty: 'No tanks are recorded.',
      }),
    },
  };
};
