import { slipsBetween } from '../../source/nearest.js';

/** Words that a question has around the one that matters. */
const FILLER = new Set(
  'a all an and any are be before can do does for from given have how i if in is it its list may me my of on or please show that the there this to was what when where which will with you'.split(
    ' ',
  ),
);

/** One slip in a word of five letters and more. */
const isWord = (typed: string, word: string): boolean =>
  typed === word || (typed.length >= 5 && word.length >= 5 && slipsBetween(typed, word) <= 1);

/** A question about the whole shell, by its words. */
interface Asked {
  readonly words: readonly string[];
  /** Words that may stand beside one of its own: `water` beside `shut-off`. */
  readonly beside?: readonly string[];
}

/** Those that every word of a question belongs to; filling words do not count. Where there is none, those whose own words stand beside others of theirs. */
export function asked<T extends Asked>(query: string, topics: readonly T[]): readonly T[] {
  const typed = query
    .toLowerCase()
    .replace(/[^\p{L}\p{N}\s/-]/gu, ' ')
    .replace(/(\w)-(?=\w)/gu, '$1')
    .split(/\s+/u)
    .filter((word) => word !== '' && !FILLER.has(word));
  if (typed.length === 0) return [];
  const has = (words: readonly string[], one: string): boolean => words.some((word) => isWord(one, word));
  const whole = topics.filter(({ words }) => typed.every((one) => has(words, one)));
  if (whole.length > 0) return whole;
  return topics.filter(
    ({ words, beside = [] }) =>
      typed.some((one) => has(words, one)) && typed.every((one) => /^\d/u.test(one) || has(words, one) || has(beside, one)),
  );
}
