import path from 'node:path';
import { findStore } from '../store/find.js';
import { NOT_PASSED } from '../store/git/not-passed.js';
import { keptAt, keptOfFile } from '../store/kept-answers.js';
import { Sections } from '../store/sections.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import { stampOfBook } from './kept-book.js';
import { programFiles } from './program-files.js';

/**
 * What was found out of a book before: of its every byte, the keys that this user knows, and the store and history that it is compared
 * with, where there is one. Undefined for a store outside Git, and in a hook of Git.
 */
export async function sectionsOfVerify(
  { file, signedBy }: { readonly file: string; readonly signedBy?: string },
  context: Context,
): Promise<Sections | undefined> {
  const { io, settings } = context;
  if (settings.book !== undefined || NOT_PASSED.some((name) => io.env[name] !== undefined)) return undefined;
  const more = await stampOfBook(file, context);
  const question = JSON.stringify(['verify', io.cwd, path.resolve(io.cwd, file), settings.store ?? '', signedBy ?? '']);
  const root = storeRoot(context);
  if (root === undefined) return Sections.open(keptOfFile(more, { question, program: programFiles() }));
  const at = await keptAt(root, {
    room: 'verify',
    question,
    program: programFiles(),
    inGit: ['refs/tags'],
    standing: true,
    more,
  });
  return at && Sections.open(at);
}

/** Undefined where none was named and none is found: the book is then looked at by itself. */
function storeRoot({ io, settings }: Context): string | undefined {
  try {
    return findStore(io.cwd, settings.store);
  } catch (error) {
    if (error instanceof UserError && settings.store === undefined) return undefined;
    throw error;
  }
}
