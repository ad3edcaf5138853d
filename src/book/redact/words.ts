/** Words of a text as names are compared: letters of any script without marks and in small letters, or digits. */
export interface Word {
  readonly folded: string;
  readonly from: number;
  readonly to: number;
}

const WORD = /[\p{L}\p{M}]+|\p{N}+/gu;

export function wordsIn(text: string): readonly Word[] {
  return [...text.matchAll(WORD)].map((match) => ({
    folded: folded(match[0]),
    from: match.index,
    to: match.index + match[0].length,
  }));
}

/** `José` → `jose`, `GRÖSSE` → `grosse`. */
export const folded = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replaceAll('ß', 'ss');

/** Endings that a name takes in a sentence: a genitive, a plural, the cases of languages that have them. */
const ENDINGS = new Set([
  ...['s', 'es', 'n', 'en', 'ens', 'e', 'a', 'u', 'o', 'i', 'y', 'ie', 'em', 'om', 'im', 'ym', 'ov', 'ova', 'owi', 'ego', 'emu'],
  ...['in', 'ina', 'sche', 'schen', 'scher', 'son'],
]);
/** A shorter name takes an s at most: `Al` with other endings is another word. */
const LEAST_WITH_ENDINGS = 4;

/** Whether a word of a text is the name, as it stands or with an ending. Never a part of another word: `aluminium` is no `Al`. */
export function isName(word: string, name: string): boolean {
  if (word === name) return true;
  if (!word.startsWith(name)) return false;
  const ending = word.slice(name.length);
  return name.length >= LEAST_WITH_ENDINGS ? ENDINGS.has(ending) : name.length > 1 && ending === 's';
}
