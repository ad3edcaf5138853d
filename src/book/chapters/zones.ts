import type { Book } from '../book.js';
import { decisionsOf } from '../decisions.js';
import { table } from '../table.js';

/** Every named cavity: what closes it, how full it is, and what way is spare. */
export function zoneTable(book: Book) {
  const fills = new Map(book.assessment.figures.services.zones.map((one) => [one.id, one]));
  return table(book.show, {
    look: 'dense tight',
    rows: book.assessment.model.shell.zones,
    home: (zone) => zone.id,
    marks: (zone) => decisionsOf(book, zone.id),
    columns: (c) => [
      c.id('Zone', (zone) => zone.id),
      c.text(
        'Name',
        (zone) => zone.name,
        (zone) => zone.note,
      ),
      c.text('Concealed', (zone) => (zone.concealed ? 'yes' : 'no')),
      c.refs('Closed by', (zone) => zone.closedBy),
      c.count(
        'Filled',
        (zone) => {
          const fill = fills.get(zone.id)?.fill;
          return fill === undefined ? undefined : fill * 100;
        },
        0,
        '%',
      ),
      c.text('Spare conduit', (zone) => [zone.spare, zone.pullCord ? 'pull cord' : undefined].filter(Boolean).join(', ')),
      c.refs('Cord ends', (zone) => zone.cordEnds ?? []),
    ],
    empty: 'No zones are recorded.',
  });
}
