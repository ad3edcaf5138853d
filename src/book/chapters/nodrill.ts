import { type Surface, surfacesInOrder } from '../../compute/access/surfaces.js';
import { outsideOf } from '../../drawing/index.js';
import { screws } from '../../query/release/index.js';
import { FACINGS } from '../../records/index.js';
import type { Book, ChapterMaker } from '../book.js';

/** Each wall, floor and roof face with what runs behind it, and the longest safe screw by areas. */
export const nodrill: ChapterMaker = (book) => ({
  key: 'nodrill',
  title: 'Where not to drill',
  template: 'nodrill',
  data: {
    figures: drilled(book).flatMap((surface, at) => {
      // The first stands under the chapter's head.
      const figure = book.draw.noDrillFace(book.assessment, surface, book.availableSize('landscape', at === 0 ? 26 : 16));
      return figure ? [{ ...figure, sheet: 'landscape' }] : [];
    }),
    areas: areaSheets(book),
  },
});

/** The outside faces, then every lining, floor and ceiling that has a sheet. */
const drilled = ({ assessment: { model } }: Book): readonly Surface[] => [
  ...FACINGS.map(outsideOf),
  ...surfacesInOrder(model).filter(({ seenFrom }) => seenFrom === 'inside'),
];

/** The longest safe screw by areas, of every face that has sheets: what may be drilled from inside, then from outside. */
function areaSheets(book: Book) {
  const map = screws(book.assessment);
  const { widthMm } = book.availableSize('landscape');
  const inside = surfacesInOrder(book.assessment.model).filter(({ seenFrom }) => seenFrom === 'inside');
  return [...inside, ...FACINGS.map(outsideOf)].flatMap((surface) => {
    const figure = book.draw.drillAreas(book.assessment, map, surface, { widthMm, heightMm: SHEET_MM });
    return figure ? [{ ...figure, sheet: 'landscape' }] : [];
  });
}
/** Two to a page. */
const SHEET_MM = 84;
