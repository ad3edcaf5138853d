import type { SealCheck } from '../../archive/check-seal.js';
import type { Manifest } from '../../archive/manifest.js';
import type { Counted, Difference } from '../../archive/verify.js';
import type { KnownKey } from '../../signing/known-keys.js';
import type { Compared } from '../book-and-store.js';
import type { SignedBy } from '../book-seal.js';
import type { Context } from '../context.js';
import type { Status } from '../io.js';
import type { OpenStore } from '../open.js';
import type { PrintedAgain } from '../print-again.js';
import type { Registry } from '../registry.js';

interface Options {
  readonly file: string;
  readonly quick: boolean;
  readonly proved: boolean;
  readonly signedBy?: string;
}

export function declareVerify(registry: Registry): void {
  registry
    .add('verify <book.pdf>', 'is this book unchanged, by whom is it signed, is it the same as the store', [
      'shellbook verify QF-007-service.pdf                 unchanged, and signed by whom?',
      'shellbook verify QF-007-shop.pdf --store records    against that store, every page printed again',
    ])
    .option('--quick', 'do not print the pages again')
    .option('--signed-by <fingerprint>', 'the key that it must be signed with, as on the shop’s own paper')
    .option('--proved', 'status 1 where it is not signed with a known key')
    .action(
      registry.run(
        ([file], { quick, proved, signedBy }) => ({
          file: file as string,
          quick: quick === true,
          proved: proved === true,
          ...(typeof signedBy === 'string' ? { signedBy } : {}),
        }),
        verify,
      ),
    );
}

/** Everything that was found out about one book. */
export interface Verified {
  readonly shown: string;
  readonly manifest: Manifest | undefined;
  readonly seal: SealCheck;
  readonly own: readonly Difference[];
  readonly signed: SignedBy;
  /** Absent where the manifest cannot be read. */
  readonly compared?: Compared;
  /** Absent where pages were not to be printed again. */
  readonly again?: PrintedAgain;
  /** Differences from the store: in its records, its pages, and the key that it signs with. */
  readonly fromStore: readonly Difference[];
}

async function verify(options: Options, context: Context): Promise<Status> {
  const found = await verified(options, context);
  const { own, fromStore, signed } = found;
  if (context.settings.json) await printJson(found, context);
  else {
    const { verifyText } = await import('../report/verify-text.js');
    context.print(verifyText(found, context.paint));
  }
  return own.length > 0 || fromStore.length > 0 || (options.proved && !signed.proved) ? 1 : 0;
}

async function verified(options: Options, context: Context): Promise<Verified> {
  const [{ readBook, sound }, { checkSeal }, { verifyItself }, { storeHere }] = await Promise.all([
    import('../read-book.js'),
    import('../../archive/check-seal.js'),
    import('../../archive/verify.js'),
    import('../book-and-store.js'),
  ]);
  context.progress(`Reading ${options.file}`);
  const { shown, book } = await readBook(options.file, context);
  context.progress('Counting its records, photos and pages again');
  const seal = sound(shown, () => checkSeal(book));
  const counted = sound(shown, () => verifyItself(book, seal));
  const manifest = 'manifest' in book.manifest ? book.manifest.manifest : undefined;
  const store = await storeHere(context);
  const [{ signedBy, unsignedDespite }, { keysOfStore, ownKeys, typedKey }] = await Promise.all([
    import('../book-seal.js'),
    import('../known-keys.js'),
  ]);
  const typed = options.signedBy === undefined ? [] : [typedKey(options.signedBy)];
  const shopKeys = store ? keysOfStore(store.text, context) : [];
  const signed = signedBy(seal, [...shopKeys, ...(await ownKeys(context)), ...typed]);
  const base = { shown, manifest, seal, own: counted.differences, signed };
  if (!manifest) return { ...base, fromStore: [] };
  const { compareWithStore } = await import('../book-and-store.js');
  const compared = await compareWithStore(shown, book, manifest, store, context);
  const asked: readonly KnownKey[] = compared.matches === null ? typed : [...typed, ...shopKeys];
  const keys = typed.length > 0 ? typed : asked;
  const again = await pagesAgain(options, counted, manifest, signed, store, compared, context);
  const fromStore = [
    ...compared.differences,
    ...(again && 'differences' in again ? again.differences : []),
    ...unsignedDespite(signed, keys, await dayInStore(store, manifest)),
  ];
  return { ...base, compared, ...(again ? { again } : {}), fromStore };
}

async function pagesAgain(
  { quick }: Options,
  { found }: Counted,
  manifest: Manifest,
  { signature }: SignedBy,
  store: OpenStore | undefined,
  { matches, matchesRevision }: Compared,
  context: Context,
): Promise<PrintedAgain | undefined> {
  if (!store || !found || matches === null) return undefined;
  if (quick) return { why: 'left out with --quick' };
  if (!matchesRevision) return { why: 'the records are not those of the store at that revision' };
  const { printAgain } = await import('../print-again.js');
  const signer = signature && { name: signature.signer.name, fingerprint: signature.signer.fingerprint };
  return printAgain(found, manifest, signer, store, context);
}

/** Day of the book's revision by the store's own history. */
async function dayInStore(store: OpenStore | undefined, { revision }: Manifest): Promise<string | undefined> {
  const commits = (await store?.history?.commits()) ?? [];
  return commits.find(({ commit }) => commit === revision)?.date.slice(0, 10);
}

async function printJson({ manifest, seal, own, signed, compared, again, fromStore }: Verified, context: Context): Promise<void> {
  const { envelope } = await import('../report/json.js');
  const differences = [...own.map((one) => ({ with: 'itself', ...one })), ...fromStore.map((one) => ({ with: 'store', ...one }))];
  const pagesDiffer = again !== undefined && 'differences' in again && again.differences.length > 0;
  context.print(
    envelope('verify', manifest?.shell ?? null, manifest?.revision ?? null, {
      edition: manifest?.edition,
      sealed: seal.sealed,
      matches_itself: own.length === 0,
      signed_by: signedByJson(signed),
      proved: signed.proved,
      matches_store: compared?.matches === true && pagesDiffer ? false : (compared?.matches ?? null),
      matches_revision: compared?.matchesRevision === true && pagesDiffer ? false : compared?.matchesRevision,
      pages_compared: again !== undefined && 'differences' in again,
      pages_not_compared_because: again !== undefined && 'why' in again ? again.why : undefined,
      not_covered: seal.notCovered,
      fingerprint: manifest?.fingerprint,
      withheld: manifest?.withheld ?? [],
      differences,
    }),
  );
}

function signedByJson({ signature, standing, words }: SignedBy) {
  if (!signature) return null;
  return {
    name: signature.signer.name,
    fingerprint: signature.signer.fingerprint,
    day: signature.day ?? null,
    known: standing?.is === 'known',
    said: words,
  };
}
