import { lengthDown } from '../../quantity/format.js';
import { type UnderFloor, underFloor } from '../../query/release/index.js';
import type { Book, Chapter } from '../book.js';
import { table } from '../table.js';

/** Where no floor sheet is recorded: that no screw is proved safe, and what lies shallowest under it. Nothing where the floor has its own drawing. */
export function floorScrewPage(book: Book): readonly Chapter[] {
  const under = underFloor(book.assessment.model);
  if (under === undefined) return [];
  const { shell } = book.assessment.model;
  const nameOf = (id: string): string | undefined => {
    const record = shell.byId.get(id)?.record as { name?: string; circuit?: string; medium?: string } | undefined;
    return record?.name ?? shell.circuits.find((one) => one.id === record?.circuit)?.name ?? record?.medium;
  };
  return [
    {
      key: 'handover-floor',
      title: 'Screws: floor',
      template: 'handover-floor',
      data: {
        more: Math.max(0, under.length - SHOWN),
        under: table<UnderFloor>(book.show, {
          look: 'dense tight',
          rows: under.slice(0, SHOWN),
          columns: (c) => [
            c.text('ID', ({ id }) => id),
            c.text('What', ({ id }) => nameOf(id)),
            c.text('Begins under the floor at', ({ depthMm }) => lengthDown(depthMm, book.show.system)),
            c.text('Aft', ({ fromMm, toMm }) => [...new Set([book.show.length(fromMm), book.show.length(toMm)])].join(' to ')),
          ],
          empty:
            'No run and no joint is recorded within 6 in (150 mm) under the floor. That proves nothing of what is not recorded.',
        }),
      },
    },
  ];
}

const SHOWN = 24;
