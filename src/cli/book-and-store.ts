import { type ComparedSide, sideOfBook, storeDifferences } from '../archive/against-store.js';
import { fingerprint } from '../archive/fingerprint.js';
import type { Manifest } from '../archive/manifest.js';
import { type CarriedBook, carriedRecords } from '../archive/open-book.js';
import { type BookDifference, storeOfBook } from '../archive/verify.js';
import { carriedIn } from '../book/edition-records.js';
import { loadStore } from '../model/load.js';
import type { StoreText } from '../model/load-types.js';
import { hashPhotosAt, readStoreTextAt } from '../store/at-revision.js';
import { hashPhotos } from '../store/hash-photos.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import { type OpenStore, openStoreFor } from './open.js';
import { shownPath } from './shown-path.js';

/** What a store says of the records in a book. */
export interface Compared {
  /** Whether its record is the book's as it stands now. Null: there is no store to ask, or it has no such shell. */
  readonly matches: boolean | null;
  /** Whether its record at the book's revision is the book's; null where the store has no such revision. */
  readonly matchesRevision: boolean | null;
  /** Whom was asked, or why nobody. A phrase. */
  readonly store: string;
  readonly differences: readonly BookDifference[];
}

/** The store that was named or that is found from here; undefined where none was named and none is found. */
export async function storeHere(context: Context): Promise<OpenStore | undefined> {
  try {
    return await openStoreFor(context);
  } catch (error) {
    if (error instanceof UserError && context.settings.store === undefined) return undefined;
    throw error;
  }
}

/**
 * Compares the records in a book, as they are carried, with the store's: those of the book's revision and those of now, each as this
 * edition carries them. What the book claims of itself, as a fingerprint, is not asked.
 */
export async function compareWithStore(
  shown: string,
  book: CarriedBook,
  manifest: Manifest,
  store: OpenStore | undefined,
  context: Context,
): Promise<Compared> {
  const none = { matches: null, matchesRevision: null, differences: [] };
  if (!store) return { ...none, store: 'no store here to compare with: name one with --store DIR' };
  const where = shownPath(store.root, context);
  const ours = loadStore(storeOfBook(shown, carriedRecords(book, manifest), manifest)).shells.get(manifest.shell);
  if (!ours || !store.loaded.shells.has(manifest.shell))
    return { ...none, store: `the store in ${where} has no shell ${manifest.shell}` };
  context.progress(`Comparing with ${where}`);
  const [now, then] = [
    wholeOf(store.text, await hashPhotos(store.text, manifest.shell), manifest),
    await wholeThen(store, manifest),
  ];
  const mine = sideOfBook(ours.model, manifest);
  const apart = now ? storeDifferences(mine, now.carried) : [];
  const apartThen = then && storeDifferences(mine, then.carried);
  const hidden = apart.length === 0 && now ? hiddenChange(manifest, now.whole, then?.whole) : [];
  const differences = [...apart, ...hidden];
  return {
    matches: differences.length === 0,
    matchesRevision: apartThen ? apartThen.length === 0 : differences.length === 0 ? true : null,
    store: where,
    differences,
  };
}

/** A record of the store: fingerprint of the whole, and what of it an edition carries. */
interface StoreRecord {
  readonly whole: string;
  readonly carried: ComparedSide;
}

function wholeOf(
  text: StoreText,
  photoHashes: ReadonlyMap<string, string>,
  { edition, shell }: Manifest,
): StoreRecord | undefined {
  const loaded = loadStore(text).shells.get(shell);
  if (!loaded) return undefined;
  const { model, photoHashes: named } = carriedIn(text, loaded.model, photoHashes, edition);
  return { whole: fingerprint(loaded.model, photoHashes), carried: { model, photoHashes: named } };
}

/** A full commit's name and nothing else: what a book says of itself is not handed to Git as anything more. */
export const COMMIT = /^(?:[0-9a-f]{40}|[0-9a-f]{64})$/u;

/** The store's record at the book's revision; undefined where the store has no such revision. */
async function wholeThen({ root, history }: OpenStore, manifest: Manifest): Promise<StoreRecord | undefined> {
  const { revision, shell } = manifest;
  if (revision === null || !COMMIT.test(revision) || !history) return undefined;
  try {
    return wholeOf(await readStoreTextAt(root, revision), await hashPhotosAt(root, revision, shell), manifest);
  } catch (error) {
    if (error instanceof UserError) return undefined;
    throw error;
  }
}

/** Something that changed in the store since, and that this edition withholds. Books of before say the whole's fingerprint themselves. */
function hiddenChange(manifest: Manifest, now: string, then: string | undefined): readonly BookDifference[] {
  // A book of changes that no commit has is not of the revision that it names: what it withholds cannot be known there.
  const since = manifest.uncommitted.length > 0 ? undefined : then;
  const before = manifest.seal === 2 ? since : manifest.fingerprint;
  if (before === undefined || before === now) return [];
  const message =
    manifest.edition === 'shop'
      ? 'The store has another fingerprint, although no record differs: this version of the program may count otherwise.'
      : 'Something that this edition leaves out has changed in the store: only the shop edition can show what.';
  return [{ part: 'fingerprint', name: manifest.fingerprint, message }];
}
