import { kindsByWeld, shortInWords } from '../../drawing/index.js';
import { anchor } from '../../model/anchor.js';
import type { Inspection, Weld } from '../../records/index.js';
import type { Book } from '../book.js';
import { decisionsOf } from '../decisions.js';
import { type Column, ROLL_MM, table } from '../table.js';

/** Anchor of a symbol in the table of symbols. */
export const symbolAnchor = (key: string): string => anchor(`weld symbol ${key}`);

/** One line of the schedule, with the sheet of the map that it belongs to. */
export interface ScheduleLine {
  readonly weld: Weld;
  readonly sheet?: { readonly title: string; readonly at: string; readonly to: string };
  /** Welds on the same sheet whose line is under an earlier one. */
  readonly also: readonly string[];
}

/** One look at a weld, in words: `VT reject (undercut), 29 Sep 2025, J5`. */
function lookWords(book: Book, one: Inspection): string {
  const why = one.reason ? ` (${one.reason})` : '';
  const after = one.repair ? ` after repair ${one.repair}` : '';
  const who = book.edition === 'shop' ? `, ${one.by}` : '';
  return `${one.method} ${one.result}${after}${why}, ${book.show.date(one.date)}${who}`;
}

/** Every look in order; never looked at is told as what it is. */
const inspectionWords = (book: Book, weld: Weld): string =>
  weld.inspections.length === 0 ? 'not inspected: not verified' : weld.inspections.map((one) => lookWords(book, one)).join('; ');

/** The last look decides. */
const accepted = (weld: Weld): boolean => weld.inspections.at(-1)?.result === 'accept';

/** Errors and warnings of the rules about a weld, by rule: what an auditor must not have to find elsewhere. */
function judgedOf(book: Book): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const { rule, severity, ids } of book.assessment.findings) {
    if (severity === 'note' || !rule.startsWith('weld.')) continue;
    for (const id of ids) found.set(id, [...new Set([...(found.get(id) ?? []), rule])]);
  }
  return found;
}

/** The schedule, a weld to a line, grouped by the sheets of the map. */
export function scheduleTable(book: Book, lines: readonly ScheduleLine[]) {
  const { shop, shell } = book.assessment.model;
  const forShop = book.edition === 'shop';
  const style = { standard: shop.weldSymbols, units: shop.units };
  const kinds = kindsByWeld(shell.welds);
  const judged = judgedOf(book);
  return table<ScheduleLine>(book.show, {
    look: 'dense roll',
    widthMm: ROLL_MM,
    rows: lines,
    home: ({ weld }) => weld.id,
    marks: ({ weld }) => decisionsOf(book, weld.id),
    group: ({ sheet }) => sheet?.title,
    groupAt: ({ sheet }) => sheet,
    after: ({ also }) => ({ lead: 'Also on this sheet, under an earlier one:', ids: also }),
    columns: (c) => [
      c.id('Weld', ({ weld }) => weld.id),
      { ...c.refs('Joins', ({ weld }) => [...new Set(weld.joins.flat())]), mayWrap: true },
      symbolColumn(({ weld }) => kinds.get(weld)?.key),
      c.text('Type, size × length', ({ weld }) => shortInWords(weld, style)),
      c.text('WPS', ({ weld }) => weld.procedure),
      c.text('Pos.', ({ weld }) => weld.position),
      c.text('Made', ({ weld }) => book.show.date(weld.date)),
      ...(forShop ? [c.text('By', ({ weld }) => weld.welder)] : []),
      {
        head: 'Inspection',
        kind: 'text',
        cell: ({ weld }) => {
          const rules = judged.get(weld.id) ?? [];
          const text = [inspectionWords(book, weld), ...rules].join('; ');
          return {
            text,
            ...(accepted(weld) && rules.length === 0 ? {} : { bad: true }),
            ...(weld.note ? { sub: weld.note } : {}),
          };
        },
      },
    ],
    empty: 'No welds are recorded.',
  });
}

const symbolColumn = (key: (line: ScheduleLine) => string | undefined): Column<ScheduleLine> => ({
  head: 'Sym.',
  kind: 'id',
  cell: (line) => {
    const own = key(line);
    return own === undefined ? { text: '–' } : { refs: [{ id: own, text: own, to: symbolAnchor(own) }] };
  },
});

/** Day of the first look that rejected it. */
const rejectedOn = (weld: Weld): string | undefined => weld.inspections.find(({ result }) => result === 'reject')?.date;

const byReject = (a: Weld, b: Weld): number => (rejectedOn(a) ?? '').localeCompare(rejectedOn(b) ?? '', 'en');

/** Every weld that was rejected, with each look in order and how it was closed. */
export function repairTable(book: Book) {
  const { shell } = book.assessment.model;
  return table<Weld>(book.show, {
    look: 'tight',
    rows: shell.welds.filter(rejectedOn).sort(byReject),
    columns: (c) => [
      c.refs('Weld', (weld) => [weld.id]),
      c.refs('Joins', (weld) => [...new Set(weld.joins.flat())]),
      c.text('Inspections, in order', (weld) => inspectionWords(book, weld)),
      {
        head: 'Finding',
        kind: 'id',
        cell: (weld) => {
          const marks = decisionsOf(book, weld.id);
          return marks.length > 0 ? { marks } : { text: '–' };
        },
      },
      {
        head: 'Stands',
        kind: 'text',
        cell: (weld) => (accepted(weld) ? { text: 'accepted' } : { text: 'rejected, not repaired', bad: true }),
      },
    ],
    empty: 'No weld was rejected.',
  });
}
