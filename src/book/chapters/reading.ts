import { REACH_MM } from '../../compute/access/reach.js';
import { MEDIA } from '../../records/index.js';
import type { Book, ChapterMaker } from '../book.js';

/** Cautions first, then the datum, the sides, ids, line patterns and what the words for reach mean. */
export const reading: ChapterMaker = (book) => {
  const { shell } = book.assessment.model;
  const { length } = book.show;
  return {
    key: 'reading',
    title: 'Cautions, and how to read this book',
    template: 'reading',
    data: {
      media: mediaKey(book),
      reaches: [
        { word: 'exposed', means: 'no panel comes off: it stands where a hand gets at it' },
        { word: 'by hand', means: `the item lies within ${length(REACH_MM.hand)} of the opening` },
        { word: 'to the forearm', means: `within ${length(REACH_MM.forearm)}` },
        { word: 'to the arm', means: `within ${length(REACH_MM.arm)}` },
        { word: 'beyond reach', means: 'further than that, or the opening does not let so much of an arm in' },
        { word: 'tool; both hands', means: 'a hand closed on a tool gets there too; so do both hands' },
      ],
      units: { us: 'US units', metric: 'metric units', both: 'US units, with metric units beside them' }[book.show.system],
      zones: shell.zones.length > 0,
    },
  };
};

/** Line, letter and name of each medium that the shell has. */
export function mediaKey(book: Book) {
  const used = new Set(book.assessment.model.shell.services.map((service) => service.medium));
  return MEDIA.filter((medium) => used.has(medium)).map((medium) => ({
    medium,
    letter: book.draw.mediumLetter(medium),
    name: book.draw.mediumName(medium),
    svg: book.draw.swatch(medium),
  }));
}
