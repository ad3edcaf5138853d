import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Manifest } from '../archive/manifest.js';
import type { CarriedBook } from '../archive/open-book.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import { shownPath } from './shown-path.js';

/** A book beyond this was not printed here, and does not fit into memory either. */
const LARGEST_BYTES = 2 ** 31 - 1;

/** A printed book opened, and its path as the person typed it. */
export interface BookFile {
  readonly shown: string;
  readonly book: CarriedBook;
}

/** Throws {@link UserError} where the file cannot be read, is no PDF, or carries no record. */
export async function readBook(file: string, context: Context): Promise<BookFile> {
  const full = path.resolve(context.io.cwd, file);
  const shown = shownPath(full, context);
  const bytes = await bytesOf(full, shown);
  const { openBook } = await import('../archive/open-book.js');
  return { shown, book: sound(shown, () => openBook(bytes)) };
}

/** The manifest; throws {@link UserError} where it is damaged. */
export function requireManifest({ shown, book }: BookFile): Manifest {
  if ('manifest' in book.manifest) return book.manifest.manifest;
  throw new UserError(`${shown} is damaged: ${book.manifest.fault}.`);
}

/** Whatever goes wrong in a file that anybody may have written is a fault of the file: one message, status 2. */
export function sound<T>(shown: string, act: () => T): T {
  try {
    return act();
  } catch (error) {
    if (error instanceof UserError) throw error;
    const why = (error as Error).name === 'PdfFault' ? (error as Error).message : 'it is damaged';
    throw new UserError(`${shown} cannot be read as a book: ${why}.`);
  }
}

async function bytesOf(full: string, shown: string): Promise<Uint8Array> {
  const found = await stat(full).catch(() => undefined);
  if (!found) throw new UserError(`There is no file ${shown}. Name a book that was printed by \`shellbook book\`.`);
  if (!found.isFile()) throw new UserError(`${shown} is no file. Name a book that was printed by \`shellbook book\`.`);
  if (found.size > LARGEST_BYTES) throw new UserError(`${shown} is larger than 2 GB, expected a book.`);
  return readFile(full).catch((error: NodeJS.ErrnoException) => {
    throw new UserError(`${shown} cannot be read: ${error.code ?? 'unknown reason'}.`);
  });
}
