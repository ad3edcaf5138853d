import type { ChapterMaker } from '../book.js';

/** Plan, roof, sides, front, rear and underside, each to scale on a turned sheet. */
export const arrangement: ChapterMaker = (book) => ({
  key: 'arrangement',
  title: 'General arrangement',
  template: 'arrangement',
  data: {
    figures: book.draw
      .generalArrangement(book.assessment, book.availableSize('landscape', 20))
      .map((figure) => ({ ...figure, sheet: 'landscape' })),
  },
});
