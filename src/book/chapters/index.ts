import type { Book, Chapter, ChapterMaker } from '../book.js';
import type { Edition } from '../input.js';
import { cover } from './cover.js';

/** Which chapters each edition has, and in which order: by question and place first, by system second, by trade last. */
const ORDER: Readonly<Record<Edition, readonly ChapterMaker[]>> = {
  owner: [cover],
  service: [cover],
  shop: [cover],
};

export const chaptersOf = (book: Book): readonly Chapter[] => ORDER[book.edition].map((make) => make(book));
