import { anchor } from '../model/anchor.js';
import { columnWidths } from './column-widths.js';
import type { FigureStyle, Show } from './show.js';
import type { Cell, Ref, TableData, TableRow } from './table-data.js';

export type { Cell, Ref, TableData, TableRow } from './table-data.js';

export interface Column<R> {
  readonly head: string;
  readonly unit?: string;
  /** Takes what two of its words need: longer cells go to a second line, so that the other columns need not. */
  readonly mayWrap?: boolean;
  readonly kind: Cell['kind'];
  cell(row: R): Omit<Cell, 'kind' | 'head' | 'home'>;
}

type Value = number | undefined;
const MISSING = '–';
/** Verdicts that need no second look; all others stand out, in bold as well as in colour. */
const GOOD = new Set(['within', 'passed']);
/** Width of the text on an upright sheet, mm: letter and A4 differ by less than matters here. */
const TEXT_MM = 175;
/** The same for the smaller type of a roll, in which a record has one line. */
export const ROLL_MM = 188;

export const ref = (id: string, text = id): Ref => ({ id, text, to: anchor(id) });

/** The columns that a chapter builds its tables of. */
export function columnsIn<R>(show: Show) {
  /** One column; where both systems are shown, the second stands small under the first, so that columns stay narrow. */
  const figures =
    ([first, second]: readonly FigureStyle[]) =>
    (head: string, value: (row: R) => Value): Column<R> => ({
      head,
      unit: second ? `${first?.unit} / ${second.unit}` : (first?.unit ?? ''),
      kind: 'number',
      cell: (row) => {
        const given = value(row);
        if (given === undefined || !Number.isFinite(given) || !first) return { text: MISSING };
        return { text: first.write(given), ...(second ? { sub: second.write(given) } : {}) };
      },
    });
  return {
    id: (head: string, id: (row: R) => string | undefined, sub?: (row: R) => string | undefined): Column<R> => ({
      head,
      kind: 'id',
      cell: (row) => ({ text: id(row) ?? MISSING, ...(sub?.(row) ? { sub: sub(row) as string } : {}) }),
    }),
    refs: (head: string, ids: (row: R) => readonly (string | undefined)[], sub?: (row: R) => string | undefined): Column<R> => ({
      head,
      kind: 'id',
      cell: (row) => {
        const known = ids(row).filter((id): id is string => id !== undefined && id !== '');
        const more = sub?.(row) ? { sub: sub(row) as string } : {};
        if (known.length > 0) return { refs: known.map((id) => ref(id)), ...more };
        return more.sub ? more : { text: MISSING };
      },
    }),
    text: (head: string, text: (row: R) => string | undefined, sub?: (row: R) => string | undefined): Column<R> => ({
      head,
      kind: 'text',
      cell: (row) => ({ text: text(row) || MISSING, ...(sub?.(row) ? { sub: sub(row) as string } : {}) }),
    }),
    verdict: (text: (row: R) => string): Column<R> => ({
      head: 'Verdict',
      kind: 'text',
      cell: (row) => ({ text: text(row), ...(GOOD.has(text(row)) ? {} : { bad: true }) }),
    }),
    count: (head: string, value: (row: R) => Value, decimals = 0, unit?: string): Column<R> => ({
      head,
      ...(unit ? { unit } : {}),
      kind: 'number',
      cell: (row) => {
        const given = value(row);
        return { text: given === undefined ? MISSING : given.toFixed(decimals) };
      },
    }),
    page: (id: (row: R) => string | undefined, head = 'Page'): Column<R> => ({
      head,
      kind: 'page-no',
      cell: (row) => {
        const given = id(row);
        return given === undefined ? {} : { page: anchor(given) };
      },
    }),
    length: figures(show.ways.length),
    thickness: figures(show.ways.thickness),
    mass: figures(show.ways.mass),
    smallMass: figures(show.ways.smallMass),
    massDown: figures(show.ways.massDown),
    lineMass: figures(show.ways.lineMass),
    area: figures(show.ways.area),
    station: figures(show.ways.station),
    sectionArea: figures(show.ways.sectionArea),
    inertia: figures(show.ways.inertia),
    pressure: figures(show.ways.pressure),
  };
}
export type Columns<R> = ReturnType<typeof columnsIn<R>>;

export interface TableOptions<R> {
  readonly caption?: string;
  readonly look?: string;
  readonly rows: readonly R[];
  columns(c: Columns<R>): readonly Column<R>[];
  readonly empty: string;
  readonly keepEmpty?: boolean;
  /** Width that it is set in, mm; absent: that of the text. */
  readonly widthMm?: number;
  /** Record that is at home in the row. */
  home?(row: R): string | undefined;
  /** Rows with the same heading, in the order given, stand under it. */
  group?(row: R): string | undefined;
  /** Anchors of the heading of a row's group: its own, and that of the drawing that it belongs to. */
  groupAt?(row: R): { readonly at: string; readonly to: string } | undefined;
  /** Findings about the row's record: printed in its second cell. */
  marks?(row: R): readonly Ref[];
  /** What closes the group of a row: many ids in one run. */
  after?(row: R): { readonly lead: string; readonly ids: readonly string[] } | undefined;
}

/** A table as its template takes it. */
export function table<R>(show: Show, options: TableOptions<R>): TableData {
  const columns = options.columns(columnsIn<R>(show));
  const rows: TableRow[] = [];
  let heading: string | undefined;
  const close = (last: R | undefined): void => {
    const more = last === undefined ? undefined : options.after?.(last);
    if (more && more.ids.length > 0)
      rows.push({ cells: [], span: columns.length, lead: more.lead, refs: more.ids.map((id) => ref(id)) });
  };
  let before: R | undefined;
  for (const row of options.rows) {
    const own = options.group?.(row);
    if (own !== heading) close(before);
    before = row;
    if (own !== undefined && own !== heading) {
      const anchors = options.groupAt?.(row);
      const named = anchors ? { headingAt: anchors.at, headingTo: anchors.to } : {};
      rows.push({ heading: own, ...named, span: columns.length, cells: [] });
    }
    heading = own;
    const home = options.home?.(row);
    const marks = options.marks?.(row) ?? [];
    const cells = columns.map((column, at): Cell => {
      const first = at === 0 ? { head: true, ...(home ? { home: anchor(home) } : {}) } : {};
      // The column of names is narrow: findings stand with what the record is.
      const marked = at === Math.min(1, columns.length - 1) && marks.length > 0 ? { marks } : {};
      const cell = { kind: column.kind, ...column.cell(row), ...first, ...marked };
      return isLong(cell) ? { ...cell, long: true } : cell;
    });
    rows.push({ cells });
  }
  close(before);
  const shown = columns.map(({ head, unit, kind, mayWrap }) => ({
    head,
    kind,
    ...(unit ? { unit } : {}),
    ...(mayWrap ? { mayWrap } : {}),
  }));
  const look = options.look ? { look: options.look } : {};
  return {
    ...(options.caption ? { caption: options.caption } : {}),
    ...look,
    columns: shown,
    widths: columnWidths({ columns: shown, rows, ...look }, options.widthMm ?? TEXT_MM),
    rows,
    count: options.rows.length,
    empty: options.empty,
    ...(options.keepEmpty ? { keepEmpty: true } : {}),
  };
}

/** Signs of an id that stand on one line of a narrow column. */
const LINE_SIGNS = 16;

const isLong = (cell: Cell): boolean =>
  cell.kind === 'id' && [cell.text, ...(cell.refs ?? []).map((one) => one.text)].some((text) => (text?.length ?? 0) > LINE_SIGNS);
