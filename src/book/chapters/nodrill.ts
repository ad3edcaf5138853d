import { type Surface, surfacesInOrder } from '../../compute/access/surfaces.js';
import { outsideOf } from '../../drawing/index.js';
import { lengthDown } from '../../quantity/format.js';
import { SCREW_LOOK_MM, screws, screwsByPanel } from '../../query/release/index.js';
import { FACINGS } from '../../records/index.js';
import type { Book, ChapterMaker } from '../book.js';
import { table } from '../table.js';

/** Each wall, floor and roof face with what runs behind it, and how long a screw each panel takes. */
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
    panels: screwTable(book),
  },
});

/** The outside faces, then every lining, floor and ceiling that has a sheet. */
const drilled = ({ assessment: { model } }: Book): readonly Surface[] => [
  ...FACINGS.map(outsideOf),
  ...surfacesInOrder(model).filter(({ seenFrom }) => seenFrom === 'inside'),
];

/** Lengths of screws that are asked about, mm: 1 in, 2 in, and as deep as is looked. */
const LENGTHS_MM = [25.4, 50.8, SCREW_LOOK_MM];

/** For each sheet: the shallowest thing behind it, what share of it takes a screw of each length, and the metal behind. */
function screwTable(book: Book) {
  const { show } = book;
  const rows = screwsByPanel(screws(book.assessment), LENGTHS_MM);
  return table(show, {
    caption: 'Screws by panel, square in from the outside, linings from the room',
    look: 'dense',
    rows,
    columns: (c) => [
      c.refs('Panel', (row) => [row.panel]),
      c.refs('Shallowest behind it', (row) => [row.shallowest?.id]),
      c.text('Begins at', (row) => row.shallowest && lengthDown(row.shallowest.depthMm, show.system)),
      ...LENGTHS_MM.map((mm, k) => c.count(`Takes ${show.length(mm)}`, (row) => Math.floor((row.free[k] ?? 0) * 100), 0, '%')),
      c.refs('Metal behind', (row) => row.metal.slice(0, 4)),
    ],
    empty: 'No panels are recorded.',
  });
}
