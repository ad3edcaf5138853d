import { type Filled, readerOf, say, type WordKey } from '../words/index.js';
import type { Book } from './book.js';

type Values<K extends WordKey> = [Filled<K>] extends [never] ? [] : [Readonly<Record<Filled<K>, string | number>>];

/** Sentences of the catalogue for the reader of this book. */
export const sentencesFor =
  (book: Pick<Book, 'assessment'>) =>
  <K extends WordKey>(key: K, ...values: Values<K>): string =>
    say(readerOf(book.assessment.model.shop), key, ...values);
