import path from 'node:path';
import type { StoreText } from '../model/load-types.js';
import { GitFailed, runGit } from './git.js';
import { readStoreText, readText } from './read.js';
import { takenAs } from './taken.js';

/** `\x`, `\u`: with such an escape a quoted text may hold a word that does not stand there. */
const ESCAPES = ['\\x', '\\u', '\\U'];

/**
 * Record files of the store, as they lie there, that may hold any of these words in whatever case; more than those may come. Git
 * looks through them where it can, committed or not: it is quicker at it. Then what it did not find is not read.
 */
export async function filesWith(root: string, words: readonly string[]): Promise<Pick<StoreText, 'files' | 'refused'>> {
  const named = await namedByGit(root, words);
  if (named === undefined) return readStoreText(root);
  const files = new Map<string, string>();
  const refused = new Map<string, string>();
  await Promise.all(
    named.sort().map(async (file) => {
      const read = await readText(path.join(root, file));
      if (read.refused === undefined) files.set(file, read.text);
      else refused.set(file, read.refused);
    }),
  );
  return { files: new Map([...files].sort(([a], [b]) => (a < b ? -1 : 1))), refused };
}

/** Undefined where Git cannot say. */
async function namedByGit(root: string, words: readonly string[]): Promise<string[] | undefined> {
  // Git folds no case beyond ASCII.
  if (words.some((word) => /\P{ASCII}/u.test(word))) return undefined;
  const patterns = [...words, ...ESCAPES].flatMap((word) => ['-e', word]);
  const how = ['-l', '-z', '-i', '-a', '-F', '--untracked', '--no-exclude-standard'];
  try {
    const told = await runGit(root, ['grep', ...how, ...patterns, '--', 'library', 'shells']);
    return told
      .toString('utf8')
      .split('\0')
      .filter((file) => takenAs(file) === 'yaml');
  } catch (error) {
    return error instanceof GitFailed && error.status === 1 && error.said === '' ? [] : undefined;
  }
}
