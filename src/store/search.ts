import type { StoreText } from '../model/load-types.js';
import { readStoreText } from './read.js';

/**
 * Record files of the store, as they lie there, that may hold any of these words in whatever case; more than those may come. The same
 * files as every other answer reads are looked through, so that nothing hides in one; what does not hold the words is not kept.
 */
export async function filesWith(root: string, words: readonly string[]): Promise<Pick<StoreText, 'files' | 'refused'>> {
  // Beyond ASCII a letter may be written in several ways, which only a reader of records sets equal.
  if (words.some((word) => /\P{ASCII}/u.test(word))) return readStoreText(root);
  const wanted = words.map((word) => word.toLowerCase());
  return readStoreText(root, undefined, (text) => {
    // With an escape (`\x41`) a quoted text may hold a word that does not stand there.
    if (/\\[xuU]/u.test(text)) return true;
    const low = text.toLowerCase();
    return wanted.some((word) => low.includes(word));
  });
}
