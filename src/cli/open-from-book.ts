import { carriedRecords } from '../archive/open-book.js';
import { storeOfBook } from '../archive/verify.js';
import { loadStore } from '../model/load.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import type { OpenStore } from './open-store.js';
import { readBook, requireManifest, requireWhole, sound } from './read-book.js';

/**
 * The store that a printed book carries, in memory: nothing is laid down. What its seal is worth is said before any answer. Throws
 * {@link UserError} (status 1) where the book has changed since it was sealed or its signature does not hold: an answer from records that
 * somebody changed would look as good as any other.
 */
export async function openFromBook(file: string, context: Context): Promise<OpenStore> {
  if (context.settings.store !== undefined)
    throw new UserError(
      '--book and --store name two sources of records, expected one of them. To compare them: shellbook verify',
    );
  context.progress(`Reading ${file}`);
  const opened = await readBook(file, context);
  const manifest = requireManifest(opened);
  const { shown, book } = opened;
  const unproved = await requireWhole(opened, context);
  const records = sound(shown, () => carriedRecords(book, manifest));
  const damaged = records.filter(({ fault }) => fault !== undefined);
  if (damaged.length > 0) {
    const which = damaged.map(({ path, fault }) => `${path} ${fault}`).join('; ');
    throw new UserError(`${shown} is damaged, so nothing is answered from it: ${which}. See: shellbook verify ${shown}`, 1);
  }
  const text = storeOfBook(shown, records, manifest);
  const { revision, edition, withheld, homes } = manifest;
  const pages = new Map(Object.entries(homes));
  const source = { revision, edition, withheld, pages, ...(unproved === undefined ? {} : { unproved }) };
  return { root: shown, text, loaded: loadStore(text), history: null, book: source };
}
