import { type Reader, readerOf, sayTo, translated } from '../words/index.js';
import type { Book } from './book.js';

type SpokenTo = Pick<Book, 'assessment'>;

/** Who reads it. What an edition may print has its language too: owners read that of the shop, technicians and the shop English. */
export const readerFor = ({ assessment }: SpokenTo): Reader => readerOf(assessment.model.shop);

/** Sentences of the catalogue for the reader of this book. */
export const sentencesFor = (book: SpokenTo) => sayTo(readerFor(book));

/** Words that an answer made in English, as places, media and fastenings, for the reader of this book. */
export const phrasesFor =
  (book: SpokenTo) =>
  (text: string | undefined): string | undefined =>
    text === undefined ? undefined : translated(readerFor(book), text);
