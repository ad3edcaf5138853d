import { heatLimits } from '../../query/release/index.js';
import type { Book, Chapter } from '../book.js';
import { table } from '../table.js';

/** The paint on record, and what on record bounds how warm it may be baked. */
export function paintPage(book: Book): Chapter {
  const { model } = book.assessment;
  const { wires, unrated, adhesives } = heatLimits(model);
  const some = (ids: readonly string[]): string =>
    ids.length > SHOWN ? `${ids.slice(0, SHOWN).join(', ')} and ${ids.length - SHOWN} more` : ids.join(', ');
  return {
    key: 'handover-paint',
    title: 'Paint, and how warm it may be baked',
    template: 'handover-paint',
    data: {
      paint: table(book.show, {
        rows: model.shell.paint ?? [],
        columns: (c) => [
          c.text('Where', (one) => one.where),
          c.text('System', (one) => one.system),
          c.text('Code', (one) => one.code),
          c.text('Lot', (one) => one.lot),
        ],
        empty: 'No paint is on record: list it under paint in shell.yaml, with where, system and code.',
      }),
      heat: table(book.show, {
        rows: [
          ...wires.map(({ celsius, circuits }) => ({
            what: `Wire insulation of ${some(circuits)}`,
            limit: book.show.temperature(celsius + 273.15),
          })),
          ...(unrated.length > 0 ? [{ what: `Wire insulation of ${some(unrated)}`, limit: 'not recorded' }] : []),
          ...adhesives.map(({ name, panels }) => ({ what: `Adhesive (${name}) of ${some(panels)}`, limit: 'by its data sheet' })),
        ],
        columns: (c) => [c.text('What stands the heat', (one) => one.what), c.text('On record', (one) => one.limit)],
        empty: 'Nothing on record bounds it: not proved.',
      }),
    },
  };
}

const SHOWN = 8;
