import { differencesFromStore } from '../archive/against-store.js';
import { filesOfShell } from '../archive/carry.js';
import { fingerprint } from '../archive/fingerprint.js';
import type { Manifest } from '../archive/manifest.js';
import { type CarriedBook, carriedRecords } from '../archive/open-book.js';
import { type Difference, storeOfBook } from '../archive/verify.js';
import { recordsForEdition } from '../book/edition-records.js';
import { loadStore } from '../model/load.js';
import type { StoreText } from '../model/load-types.js';
import type { Model } from '../model/shell.js';
import { hashPhotosAt, readStoreTextAt } from '../store/at-revision.js';
import { hashPhotos } from '../store/hash-photos.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import { type OpenStore, openStore } from './open.js';
import { shownPath } from './shown-path.js';

/** What a store says of a book. */
export interface Compared {
  /** Null: there is no store to ask, or it has no such shell. */
  readonly matches: boolean | null;
  /** Whether the store's record at the book's revision is the book's; null where the store has no such revision. */
  readonly matchesRevision: boolean | null;
  /** Whom was asked, or why nobody. A phrase. */
  readonly store: string;
  readonly differences: readonly Difference[];
}

/** Compares a book with the store that was named or that is found from here, as it stands now; else as it stood at the book's revision. */
export async function compareWithStore(
  shown: string,
  book: CarriedBook,
  manifest: Manifest,
  context: Context,
): Promise<Compared> {
  const none = { matches: null, matchesRevision: null, differences: [] };
  const store = await storeHere(context);
  if (!store) return { ...none, store: 'no store here to compare with: name one with --store DIR' };
  const where = shownPath(store.root, context);
  const there = store.loaded.shells.get(manifest.shell);
  const ours = loadStore(storeOfBook(shown, carriedRecords(book, manifest), manifest)).shells.get(manifest.shell);
  if (!there || !ours) return { ...none, store: `the store ${where} has no shell ${manifest.shell}` };
  context.progress(`Comparing with ${where}`);
  const differences = differencesFromStore(manifest, ours.model, {
    model: there.model,
    asCarried: asCarried(store.text, there.model, manifest),
    photoHashes: await hashPhotos(store.text, manifest.shell),
  });
  const matches = differences.length === 0;
  return { matches, matchesRevision: matches || (await matchesThen(store, manifest)), store: where, differences };
}

/** A store that was named must be there; one that is only looked for need not. */
async function storeHere(context: Context): Promise<OpenStore | undefined> {
  try {
    return await openStore(context);
  } catch (error) {
    if (error instanceof UserError && context.settings.store === undefined) return undefined;
    throw error;
  }
}

/** The store's record as the book's edition would carry it. */
function asCarried(text: StoreText, model: Model, { edition, shell }: Manifest): Model {
  const files = new Map(filesOfShell(text.files.keys(), shell).map((path) => [path, text.files.get(path) as string]));
  const loaded = loadStore({ ...text, files: recordsForEdition(files, model, edition) }).shells.get(shell);
  return loaded?.model ?? model;
}

async function matchesThen(store: OpenStore, { revision, shell, fingerprint: printed }: Manifest): Promise<boolean | null> {
  if (revision === null || !store.history) return null;
  try {
    const text = await readStoreTextAt(store.root, revision, shell);
    const then = loadStore(text).shells.get(shell);
    return then ? fingerprint(then.model, await hashPhotosAt(store.root, revision, shell)) === printed : false;
  } catch (error) {
    if (error instanceof UserError) return null;
    throw error;
  }
}
