import { placesOf } from '../../query/place.js';
import { doneWords, type Repair, repairsOf } from '../../query/repairs.js';
import type { Book } from '../book.js';
import { idSpans } from '../id-spans.js';
import { table } from '../table.js';

/** Repairs, welds run again, deviations and later changes from every record in one list by date, newest first. */
export function repairsAnswer(book: Book) {
  const { shell } = book.assessment.model;
  return table<Repair>(book.show, {
    look: 'dense tight',
    rows: repairsOf(shell),
    columns: (c) => [
      c.text('Date', (one) => book.show.date(one.date)),
      c.refs('Record', (one) => [one.id]),
      {
        head: 'On, and where',
        kind: 'id',
        cell: ({ of }) => {
          const where = of.map((id) => whereIs(book, id)).find((place) => place !== undefined);
          return { refs: idSpans(of), sub: where ?? 'place not recorded' };
        },
      },
      c.text('What was wrong, or why', (one) => one.what),
      c.text('What was done', (one) => doneWords(one, book.show.date)),
      c.page((one) => one.id),
    ],
    empty: 'No repair and no later change is recorded.',
  });
}

/** Its own place; of a weld that of the parts that it joins, of a circuit that of its fuse or first end. */
function whereIs(book: Book, id: string): string | undefined {
  const { model } = book.assessment;
  const placeOf = placesOf(model);
  const { welds, circuits, runs, chassis } = model.shell;
  const weld = welds.find((one) => one.id === id);
  if (weld) {
    const parts = [...new Set(weld.joins.flat())];
    const place = parts.map((part) => placeOf(part)).find((one) => one !== undefined);
    return [`joins ${parts.join(', ')}`, place].filter(Boolean).join('; ');
  }
  const circuit = circuits.find((one) => one.id === id);
  if (circuit) {
    const at = circuit.protection?.at ?? runs.find((run) => run.circuit === id)?.from;
    return [circuit.name, at && `from ${at}`, at && placeOf(at)].filter(Boolean).join(', ') || undefined;
  }
  if (chassis.axles.some((axle) => axle.id === id)) return 'axle of the chassis';
  return placeOf(id);
}
