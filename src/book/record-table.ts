import type { Book } from './book.js';
import { decisionsOf } from './decisions.js';
import { type TableData, type TableOptions, table } from './table.js';

/** A dense table in which each record is at home, with what was decided about it. */
export const recordTable = <R extends { readonly id: string }>(
  book: Book,
  options: Omit<TableOptions<R>, 'look' | 'home' | 'marks'>,
): TableData =>
  table<R>(book.show, { ...options, look: 'dense tight', home: ({ id }) => id, marks: ({ id }) => decisionsOf(book, id) });
