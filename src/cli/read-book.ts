import { stat } from 'node:fs/promises';
import path from 'node:path';
import type { Manifest } from '../archive/manifest.js';
import type { CarriedBook } from '../archive/open-book.js';
import { readGivenFile } from '../store/given-file.js';
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
  const { shown, bytes } = await bookBytes(file, context);
  const { openBook } = await import('../archive/open-book.js');
  return { shown, book: sound(shown, () => openBook(bytes)) };
}

/** The bytes of a book's file, and its path as it is shown. Throws {@link UserError} where it cannot be read. */
export async function bookBytes(file: string, context: Context): Promise<{ readonly shown: string; readonly bytes: Uint8Array }> {
  const full = path.resolve(context.io.cwd, file);
  const shown = shownPath(full, context);
  return { shown, bytes: await bytesOf(full, shown) };
}

/** The manifest; throws {@link UserError} where it is damaged. */
export function requireManifest({ shown, book }: BookFile): Manifest {
  if ('manifest' in book.manifest) return book.manifest.manifest;
  throw new UserError(`${shown} is damaged: ${book.manifest.fault}.`);
}

/**
 * Looks at the seal before anything is answered from a book, and says what it is worth where that is less than a known key's signature;
 * gives the words for it.
 * @throws UserError with status 1 where it is broken
 */
export async function requireWhole(file: BookFile, context: Context): Promise<string | undefined> {
  const { broken, unproved } = await sealOf(file, context);
  if (broken !== undefined)
    throw new UserError(`${broken} Nothing is answered from it. See what differs: shellbook verify ${file.shown}`, 1);
  if (unproved !== undefined) reportUnproved(file.shown, unproved, context);
  return unproved;
}

/** Says that no known key stands for a book. With `--proved` the status is 1 then. */
export function reportUnproved(shown: string, unproved: string, context: Context): void {
  if (context.settings.proved) context.endAtLeast(1);
  context.tell(`${shown}: ${unproved}`);
}

/** What is to be said of a book's seal before its records are used. With `--proved` the status is 1 where there is a warning. */
export async function lookAtSeal(
  file: BookFile,
  context: Context,
): Promise<{ readonly broken?: string; readonly warning?: string }> {
  const { broken, unproved } = await sealOf(file, context);
  if (broken !== undefined) return { broken };
  if (unproved === undefined) return {};
  if (context.settings.proved) context.endAtLeast(1);
  return { warning: `${file.shown}: ${unproved}` };
}

/** What is wrong with a seal, or why nobody is proved to stand for it. */
async function sealOf(
  { shown, book }: BookFile,
  context: Context,
): Promise<{ readonly broken?: string; readonly unproved?: string }> {
  const [{ checkSeal }, { signedBy }, { ownKeys }] = await Promise.all([
    import('../archive/check-seal.js'),
    import('./book-seal.js'),
    import('./known-keys.js'),
  ]);
  const seal = sound(shown, () => checkSeal(book));
  const signed = signedBy(seal, await ownKeys(context));
  if (!seal.sealed) return { broken: `${shown} has changed since it was sealed.` };
  if (seal.signature && 'fault' in seal.signature) return { broken: `${shown}: the signature ${seal.signature.fault}.` };
  return signed.proved ? {} : { unproved: signed.words };
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
  if (!found.isFile()) throw new UserError(`${shown} is not a file. Name a book that was printed by \`shellbook book\`.`);
  if (found.size > LARGEST_BYTES) throw new UserError(`${shown} is larger than 2 GB, expected a book.`);
  return readGivenFile(full, shown, LARGEST_BYTES, 'a book');
}
