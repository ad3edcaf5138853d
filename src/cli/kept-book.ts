import { readFileSync } from 'node:fs';
import { keptOfFile } from '../store/kept-answers.js';
import { digest } from '../store/sealed.js';
import { Sections } from '../store/sections.js';
import type { Context } from './context.js';
import { programFiles } from './program-files.js';
import { bookBytes } from './read-book.js';
import { ownKeysFile } from './settings-folder.js';

/**
 * What was computed of the records in a printed book, by the book's every byte, by the keys that this user knows and by the program; in the
 * user's own folder. Undefined where a store is named beside the book, which is refused elsewhere. Throws as {@link bookBytes} does.
 */
export async function sectionsOfBook(book: string, shell: string, context: Context): Promise<Sections | undefined> {
  if (context.settings.store !== undefined) return undefined;
  return Sections.open(keptOfFile(await stampOfBook(book, context), { question: `figures ${shell}`, program: programFiles() }));
}

/** What an answer from a book depends on beside the question: the book's contents, and whom this user trusts. */
export async function stampOfBook(book: string, context: Context): Promise<string> {
  const { bytes } = await bookBytes(book, context);
  return digest([digest(bytes), digest(ownKeysText(context))].join('\n'));
}

function ownKeysText({ io: { env } }: Context): string {
  const file = ownKeysFile(env);
  try {
    return file === undefined ? '' : readFileSync(file, 'utf8');
  } catch {
    return '';
  }
}
