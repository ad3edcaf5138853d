import { type Filled, type Reader, readerOf, say, translated, type WordKey } from '../words/index.js';
import type { Book } from './book.js';

type SpokenTo = Pick<Book, 'assessment' | 'edition'>;

/** Who reads it: owners in the language that the shop names, technicians and the shop in English. */
export function readerFor({ assessment, edition }: SpokenTo): Reader {
  const reader = readerOf(assessment.model.shop);
  return edition === 'owner' ? reader : { ...reader, language: 'en' };
}

type Values<K extends WordKey> = [Filled<K>] extends [never] ? [] : [Readonly<Record<Filled<K>, string | number>>];

/** Sentences of the catalogue for the reader of this book. */
export const sentencesFor =
  (book: SpokenTo) =>
  <K extends WordKey>(key: K, ...values: Values<K>): string =>
    say(readerFor(book), key, ...values);

/** Words that an answer made in English, as places, media and fastenings, for the reader of this book. */
export const phrasesFor =
  (book: SpokenTo) =>
  (text: string | undefined): string | undefined =>
    text === undefined ? undefined : translated(readerFor(book), text);
