import type { Model } from '../model/shell.js';
import { readerOf, sayTo, translated } from '../words/index.js';

type SpokenTo = Pick<Model, 'shop'>;

/** Sentences of the catalogue for whoever looks at a drawing of this record. */
export const wordsFor = ({ shop }: SpokenTo) => sayTo(readerOf(shop));

/** Words that an answer made in English, as those of a wall, for the same. */
export const phraseFor =
  ({ shop }: SpokenTo) =>
  (text: string): string =>
    translated(readerOf(shop), text);
