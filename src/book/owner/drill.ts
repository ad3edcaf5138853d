import { surfacesInOrder } from '../../compute/access/surfaces.js';
import { screws } from '../../query/release/index.js';
import { hangingAnswer, roofAnswer } from '../answers/loads.js';
import type { ChapterMaker } from '../book.js';
import { sentencesFor } from '../sentences.js';

/** The longest safe screw of each lining and ceiling, by areas; what may be hung; the roof. */
export const drill: ChapterMaker = (book) => {
  const w = sentencesFor(book);
  const map = screws(book.assessment);
  const room = book.availableSize('landscape');
  return {
    key: 'nodrill',
    title: w('drill.title'),
    template: 'owner-drill',
    data: {
      figures: surfacesInOrder(book.assessment.model)
        .filter(({ seenFrom }) => seenFrom === 'inside')
        .flatMap((surface) => book.draw.drillAreas(book.assessment, map, surface, { widthMm: room.widthMm, heightMm: 120 }) ?? [])
        .map((figure) => ({ ...figure, sheet: 'landscape' })),
      hanging: hangingAnswer(book),
      roof: roofAnswer(book),
    },
  };
};
