import { type Surface, surfaceKey, surfacesInOrder, surfaceWords } from '../../compute/access/surfaces.js';
import { lengthDown } from '../../quantity/format.js';
import { type PanelScrews, screws, screwsByPanel } from '../../query/release/index.js';
import { panelSurfaces } from '../../query/shown.js';
import type { Book, Chapter } from '../book.js';
import { table } from '../table.js';

/** One page a lining, ceiling and floor: by areas how deep one may screw from the room, and what lies behind each sheet. */
export function screwPages(book: Book): readonly Chapter[] {
  const { model } = book.assessment;
  const map = screws(book.assessment);
  const sides = panelSurfaces(model);
  const byPanel = screwsByPanel(map, []);
  const inside = surfacesInOrder(model).filter(({ seenFrom }) => seenFrom === 'inside');
  const room = { widthMm: book.availableSize('landscape').widthMm, heightMm: 112 };
  const pages = inside.flatMap((surface, at): readonly Chapter[] => {
    const own = byPanel.filter(({ panel }) => surfaceKey(sides.get(panel) as Surface) === surfaceKey(surface));
    const figure = book.draw.drillAreas(book.assessment, map, surface, room);
    return figure ? [page(`Screws: ${surfaceWords(surface)}`, at, { figure, panels: panelTable(book, own) })] : [];
  });
  return pages.length > 0 ? pages : [page('Screws from inside', 0, {})];
}

const page = (title: string, at: number, data: object): Chapter => ({
  key: `handover-screws-${at}`,
  title,
  template: 'handover-screws',
  data: { ...data, heading: title, at: `c-handover-screws-${at}` },
});

const panelTable = (book: Book, rows: readonly PanelScrews[]) =>
  table(book.show, {
    look: 'dense',
    rows,
    columns: (c) => [
      c.text('Sheet', ({ panel }) => panel),
      c.text('Nearest behind it', ({ shallowest }) => shallowest?.id),
      c.text('begins at', ({ shallowest }) => shallowest && lengthDown(shallowest.depthMm, book.show.system)),
      c.text('Metal to screw into', ({ metal }) => metal.slice(0, 6).join(', ') || undefined),
    ],
    empty: 'No sheet is recorded on this side.',
  });
