/** A record named in a cell: printed as a link where this edition prints the record. */
export interface Ref {
  readonly id: string;
  readonly text: string;
  /** Where the link goes. */
  readonly to: string;
}

export interface Cell {
  readonly kind: 'text' | 'id' | 'number' | 'page-no';
  readonly text?: string;
  readonly refs?: readonly Ref[];
  /** Small second line. */
  readonly sub?: string;
  /** Anchor whose page number stands here. */
  readonly page?: string;
  /** A verdict to look at twice. */
  readonly bad?: boolean;
  /** An id too long to stand on one line. */
  readonly long?: boolean;
  /** First cell of a row: the row's head. */
  readonly head?: boolean;
  /** Anchor that is at home here. */
  readonly home?: string;
  /** What was found and decided about the record, linked. */
  readonly marks?: readonly Ref[];
}

export interface TableData {
  readonly caption?: string;
  /** Look of the table: a class in book.css. */
  readonly look?: string;
  readonly columns: readonly {
    readonly head: string;
    readonly unit?: string;
    readonly kind: Cell['kind'];
    readonly mayWrap?: boolean;
  }[];
  /** Percent of the width, one for each column. */
  readonly widths: readonly number[];
  readonly rows: readonly TableRow[];
  readonly count: number;
  /** The one line that stands there instead when it has no rows. */
  readonly empty: string;
  /** True where the line about emptiness must stand on the page of what comes after. */
  readonly keepEmpty?: boolean;
}

export interface TableRow {
  readonly cells: readonly Cell[];
  /** A heading across the table, kept with the row after it. */
  readonly heading?: string;
  /** Anchor of that heading, and of the page that it speaks of. */
  readonly headingAt?: string;
  readonly headingTo?: string;
  readonly span?: number;
  /** Words before a run of ids across the table, which closes a group. */
  readonly lead?: string;
  readonly refs?: readonly Ref[];
}
