import { FACINGS } from '../../model/structure.js';
import type { ChapterMaker } from '../book.js';

/** Each wall, floor and roof face with what runs behind it. */
export const nodrill: ChapterMaker = (book) => ({
  key: 'nodrill',
  title: 'Where not to drill',
  template: 'nodrill',
  data: {
    figures: FACINGS.flatMap((face) => {
      const figure = book.draw.noDrillFace(book.assessment, face, book.room('landscape', 26));
      return figure ? [{ ...figure, sheet: 'landscape' }] : [];
    }),
  },
});
