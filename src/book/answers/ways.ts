import { spareSpaces } from '../../query/load/index.js';
import { earthNodes } from '../../query/topics/earths.js';
import type { Run, ServiceNode } from '../../records/index.js';
import type { Book } from '../book.js';
import { insulatorWords } from '../passages.js';
import { table } from '../table.js';
import { madeOf, panelColumn, placeColumn, wayToRun } from '../where.js';

/** Studs and bars to which earths and bonds go. */
export function earthsAnswer(book: Book) {
  const rows = earthNodes(book.assessment.model.shell);
  return table(book.show, {
    look: 'dense tight',
    rows,
    columns: (c) => [
      c.refs('Id', (node) => [node.id]),
      c.text(
        'What',
        (node) => node.name,
        (node) =>
          [node.torqueNm === undefined ? undefined : `torque ${book.show.torque(node.torqueNm)}`, insulatorWords(node), node.note]
            .filter(Boolean)
            .join(', '),
      ),
      placeColumn(
        book,
        'Where',
        (node) => node.at,
        (node) => node.id,
      ),
      panelColumn(book),
      c.page((node) => node.id),
    ],
    empty: 'No ground bond is recorded: not verified.',
  });
}

/** Cavities that are told to have room for one more, and cords to draw it in with. */
export function spareWaysAnswer(book: Book) {
  const fills = new Map(book.assessment.figures.services.zones.map((one) => [one.id, one]));
  return table(book.show, {
    rows: book.assessment.model.shell.zones.filter((zone) => zone.spare || zone.pullCord),
    columns: (c) => [
      c.refs(
        'Zone',
        (zone) => [zone.id],
        (zone) => zone.name,
      ),
      c.text('Spare conduit, tube or grommet', (zone) => zone.spare),
      c.refs(
        'Pull cord, its ends',
        (zone) => zone.cordEnds ?? [],
        (zone) => (zone.pullCord ? (zone.cordEnds?.length ? undefined : 'yes, ends not recorded') : 'none recorded'),
      ),
      c.count(
        'Free',
        (zone) => {
          const found = fills.get(zone.id);
          return found && Math.max(0, Math.floor(((found.limit ?? 1) - found.fill) * 100));
        },
        0,
        '%',
      ),
      c.text('For', (zone) => zone.carries.map((medium) => book.draw.mediumName(medium).toLowerCase()).join(', ')),
      c.page((zone) => zone.id),
    ],
    empty: 'No spare conduit and no pull cord is recorded.',
  });
}

/** Spaces of fuse and breaker panels that nothing sits in. */
export function spareSpacesAnswer(book: Book) {
  return table<ServiceNode>(book.show, {
    rows: book.assessment.model.shell.nodes.filter(({ spaces = [] }) => spaces.length > 0),
    columns: (c) => [
      c.refs(
        'Panel of fuses or breakers',
        (node) => [node.id],
        (node) => node.name,
      ),
      c.text('Spare spaces', (node) => spareSpaces(node).join('; ') || 'none'),
      c.page((node) => node.id),
    ],
    empty: 'No panel of fuses or breakers is recorded with its spaces: look into it.',
  });
}

/** Runs that nothing uses: a technician who meets one must know that it is meant to be there. */
export function unusedAnswer(book: Book) {
  const { shell } = book.assessment.model;
  return table<Run>(book.show, {
    rows: shell.runs.filter((run) => run.spare || run.abandoned),
    columns: (c) => [
      c.refs(
        'Run',
        (run) => [run.id],
        (run) => run.note,
      ),
      c.text('Is', (run) => (run.abandoned ? 'abandoned' : 'spare')),
      c.text('Made of', (run) => madeOf(run)),
      c.refs('One end', (run) => [run.from]),
      c.refs('Other end', (run) => [run.to]),
      c.refs('Panels', (run) => wayToRun(book, run.id).panels),
      c.page((run) => run.id),
    ],
    empty: 'No spare or abandoned run is recorded.',
  });
}
