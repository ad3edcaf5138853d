import type { SealCheck } from '../archive/check-seal.js';
import type { Manifest } from '../archive/manifest.js';
import type { BookDifference, CountedBook } from '../archive/verify.js';
import { dayOf } from '../quantity/day.js';
import type { KnownKey } from '../signing/known-keys.js';
import type { Compared } from './book-and-store.js';
import type { SignedBy } from './book-seal.js';
import type { Context } from './context.js';
import type { OpenStore } from './open-store.js';
import type { PrintedAgain } from './print-again.js';
import type { TagSignature } from './tag-signature.js';

export interface VerifyOptions {
  readonly file: string;
  /** Pages are not printed again. */
  readonly quick: boolean;
  /** Fingerprint of the key that it must be signed with, as typed. */
  readonly signedBy?: string;
}

/** Everything that was found out about one book. */
export interface Verified {
  readonly shown: string;
  readonly manifest: Manifest | undefined;
  readonly seal: SealCheck;
  readonly own: readonly BookDifference[];
  readonly signed: SignedBy;
  /** Absent where the manifest cannot be read. */
  readonly compared?: Compared;
  /** Absent where pages were not to be printed again. */
  readonly again?: PrintedAgain;
  /** What Git says of the tag of the close-out that it was printed from; absent without a store that has it. */
  readonly tag?: TagSignature;
  /** Differences from the store: in its records, its pages, and the key that it signs with. */
  readonly fromStore: readonly BookDifference[];
}

/** What an answer says of a book: of its manifest and signature only what is shown. */
export interface VerifiedAnswer extends Pick<Verified, 'shown' | 'own' | 'compared' | 'again' | 'tag' | 'fromStore'> {
  readonly manifest: Omit<Manifest, 'homes'> | undefined;
  readonly seal: Pick<SealCheck, 'sealed' | 'notCovered'>;
  readonly signed: Pick<SignedBy, 'proved' | 'words'> & {
    readonly signature?: { readonly signer: { readonly name: string; readonly fingerprint: string }; readonly day?: string };
    readonly known: boolean;
  };
}

/** As {@link verified}; with `--quick`, what was found out of the same book, store and keys before is told again. */
export async function verifiedAnswer(options: VerifyOptions, context: Context): Promise<VerifiedAnswer> {
  const { sectionsOfVerify } = await import('./kept-verify.js');
  const kept = options.quick ? await sectionsOfVerify(options, context) : undefined;
  const known = kept?.get('verified') as VerifiedAnswer | undefined;
  if (known) return known;
  const { manifest, seal, signed, ...found } = await verified(options, context);
  const { homes: _pages, ...told } = manifest ?? { homes: {} };
  const { signature, standing, proved, words } = signed;
  const signer = signature && { name: signature.signer.name, fingerprint: signature.signer.fingerprint };
  const answer: VerifiedAnswer = {
    ...found,
    manifest: manifest && (told as Omit<Manifest, 'homes'>),
    seal: { sealed: seal.sealed, notCovered: seal.notCovered },
    signed: {
      proved,
      words,
      known: standing?.is === 'known',
      ...(signer ? { signature: { signer, ...(signature.day === undefined ? {} : { day: signature.day }) } } : {}),
    },
  };
  if (kept) {
    kept.put('verified', answer);
    context.later(() => kept.save());
  }
  return answer;
}

/** Looks at a book from all sides: itself, its signature, the store and its pages printed again. */
export async function verified(options: VerifyOptions, context: Context): Promise<Verified> {
  const [{ readBook, sound }, { checkSeal }, { verifyItself }, { storeHere }] = await Promise.all([
    import('./read-book.js'),
    import('../archive/check-seal.js'),
    import('../archive/verify.js'),
    import('./book-and-store.js'),
  ]);
  context.progress(`Reading ${options.file}`);
  const { shown, book } = await readBook(options.file, context);
  context.progress('Counting its records, photos and pages again');
  const seal = sound(shown, () => checkSeal(book));
  const counted = sound(shown, () => verifyItself(book, seal));
  const manifest = 'manifest' in book.manifest ? book.manifest.manifest : undefined;
  const store = await storeHere(context);
  const [{ signedBy, unsignedDespite }, { keysOfStore, ownKeys, typedKey }] = await Promise.all([
    import('./book-seal.js'),
    import('./known-keys.js'),
  ]);
  const typed = options.signedBy === undefined ? [] : [typedKey(options.signedBy)];
  const shopKeys = store ? keysOfStore(store.text, context) : [];
  const signed = signedBy(seal, [...shopKeys, ...(await ownKeys(context)), ...typed]);
  const base = { shown, manifest, seal, own: counted.differences, signed };
  if (!manifest) return { ...base, fromStore: [] };
  const { compareWithStore } = await import('./book-and-store.js');
  const compared = await compareWithStore(shown, book, manifest, store, context);
  const asked: readonly KnownKey[] = compared.matches === null ? typed : [...typed, ...shopKeys];
  const keys = typed.length > 0 ? typed : asked;
  const again = await pagesAgain(options, counted, manifest, signed, store, compared, context);
  const fromStore = [
    ...compared.differences,
    ...(again && 'differences' in again ? again.differences : []),
    ...unsignedDespite(signed, keys, await dayInStore(store, manifest)),
  ];
  const tag = await closingTag(store, manifest, signed, [...shopKeys, ...typed]);
  const bad = tag?.is === 'bad' ? [{ part: 'signature', name: tag.tag, message: tag.words } as const] : [];
  return { ...base, compared, ...(again ? { again } : {}), ...(tag ? { tag } : {}), fromStore: [...fromStore, ...bad] };
}

/** The close-out's tag, by the keys that the store knows, and by the one that this book is proved to be signed with. */
async function closingTag(
  store: OpenStore | undefined,
  manifest: Manifest,
  { signature, proved }: SignedBy,
  keys: readonly KnownKey[],
): Promise<TagSignature | undefined> {
  if (!store?.history || manifest.tag === null) return undefined;
  const { tagSignature } = await import('./tag-signature.js');
  const known = keys.flatMap(({ certificate }) => (certificate ? [certificate] : []));
  const { keysOfPeople } = await import('./signings.js');
  const closers = [...store.loaded.library.people.values()].filter(({ signs }) => signs?.includes('close'));
  const shop = proved && signature ? [...known, signature.signer] : known;
  return tagSignature(store.root, manifest.tag, shop, keysOfPeople(closers));
}

async function pagesAgain(
  { quick }: VerifyOptions,
  { found }: CountedBook,
  manifest: Manifest,
  { signature }: SignedBy,
  store: OpenStore | undefined,
  { matches, matchesRevision }: Compared,
  context: Context,
): Promise<PrintedAgain | undefined> {
  if (!store || !found || matches === null) return undefined;
  if (quick) return { why: 'left out with --quick' };
  if (!matchesRevision) return { why: 'the records are not those of the store at that revision' };
  const { printAgain } = await import('./print-again.js');
  const signer = signature && { name: signature.signer.name, fingerprint: signature.signer.fingerprint };
  return printAgain(found, manifest, signer, store, context);
}

/** Day of the book's revision by the store's own history. */
async function dayInStore(store: OpenStore | undefined, { revision }: Manifest): Promise<string | undefined> {
  const commits = (await store?.history?.commits()) ?? [];
  return dayOf(commits.find(({ commit }) => commit === revision)?.date);
}
