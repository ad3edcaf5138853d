import { placesOf } from '../../query/place.js';
import type { Weld } from '../../records/index.js';
import type { Book } from '../book.js';
import { idSpans } from '../id-spans.js';
import { table } from '../table.js';

/** One thing that was put right, allowed or changed, and the record that says so. */
interface Event {
  readonly date: string;
  readonly record: string;
  readonly of: readonly string[];
  readonly what: string;
  readonly done: string;
}

const DONE = { rework: 'reworked', repair: 'repaired', 'use as is': 'left as it is', reject: 'rejected' } as const;

/** Repairs, welds run again, deviations and later changes from every record in one list by date, newest first. */
export function repairsAnswer(book: Book) {
  const { shell } = book.assessment.model;
  const events: readonly Event[] = [...findingEvents(book), ...reworkedWelds(book), ...shell.amendments.map(asEvent)];
  return table<Event>(book.show, {
    look: 'dense tight',
    rows: [...events].sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0)),
    columns: (c) => [
      c.text('Date', (one) => book.show.date(one.date)),
      c.refs('Record', (one) => [one.record]),
      {
        head: 'On, and where',
        kind: 'id',
        cell: ({ of }) => {
          const where = of.map((id) => whereIs(book, id)).find((place) => place !== undefined);
          return { refs: idSpans(of), sub: where ?? 'place not recorded' };
        },
      },
      c.text('What was wrong, or why', (one) => one.what),
      c.text('What was done', (one) => one.done),
      c.page((one) => one.record),
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

const findingEvents = (book: Book): readonly Event[] =>
  book.assessment.model.shell.findings.map(({ id, raised, of, description, decision, reason, closed }) => ({
    date: raised,
    record: id,
    of,
    what: description,
    done: [
      decision === undefined ? 'not decided' : DONE[decision],
      reason,
      closed ? `closed ${book.show.date(closed)}` : 'still open',
    ]
      .filter(Boolean)
      .join('; '),
  }));

const asEvent = (one: Book['assessment']['model']['shell']['amendments'][number]): Event => ({
  date: one.date,
  record: one.id,
  of: one.changes,
  what: one.reason,
  done: 'changed after delivery',
});

/** Welds that an inspector rejected, unless a finding tells of the same weld already. */
function reworkedWelds(book: Book): readonly Event[] {
  const { welds, findings } = book.assessment.model.shell;
  const told = new Set(findings.flatMap(({ of }) => of));
  return welds.filter(({ id }) => !told.has(id)).flatMap((weld) => reworkOf(book, weld));
}

function reworkOf(book: Book, { id, joins, inspections }: Weld): readonly Event[] {
  const rejects = inspections.filter(({ result }) => result === 'reject');
  const [first] = rejects;
  if (!first) return [];
  const accepted = inspections.filter(({ result, date }) => result === 'accept' && date >= first.date).at(-1);
  return [
    {
      date: first.date,
      record: id,
      of: [...new Set(joins.flat())],
      what: rejects.map(({ reason }) => reason ?? 'rejected, reason not recorded').join('; then '),
      done: accepted ? `welded again; accepted ${book.show.date(accepted.date)}` : 'no later accept recorded: not proved',
    },
  ];
}
