import { readFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import type { Printer } from '../book/index.js';
import type { CommitList as BookHistory, BookInput, BookSigner, Edition, PrintedBook } from '../book/input.js';
import { inLanguage } from '../book/language.js';
import type { Commit } from '../store/history.js';
import { keepPageMap } from '../store/page-map.js';
import { writeOut } from '../store/write-out.js';
import type { Language } from '../words/index.js';
import { type CarryMaker, type CarryPhotos, openCarry } from './carry.js';
import type { Context } from './context.js';
import { fingerprintOf } from './fingerprint-of.js';
import { KeptParts } from './kept-parts.js';
import type { OpenShell } from './open.js';

export interface PrintedFile {
  readonly edition: Edition;
  readonly file: string;
  readonly pageCount: number;
  readonly warnings: readonly string[];
  readonly misfits: readonly string[];
}

/** How a set of books is printed. */
export interface PrintOptions {
  /** Whether the shop's edition carries the photo files; it does unless told otherwise. */
  readonly photos?: CarryPhotos;
  /** One that was started before the record was read; else one of its own. */
  readonly printer?: Printer;
  /** Whose name stands in the book, where it is not this user who signs: a book that is printed again. */
  readonly signer?: BookSigner | 'nobody';
  /** Of what the program says to owners, where it is not the shop's own. */
  readonly language?: Language;
}

/** A browser for as long as `use` takes. */
export async function withPrinter<T>(use: (printer: Printer) => Promise<T>): Promise<T> {
  const { openPrinter } = await import('../book/index.js');
  const printer = openPrinter();
  try {
    return await use(printer);
  } finally {
    await printer.close();
  }
}

/**
 * Prints editions of one shell's book, one browser for all of them, as many at a time as there are processors. `fileOf` says where each
 * goes. Files are written when every edition is printed: a print that fails leaves the earlier set as it was.
 */
export async function printBooks(
  opened: OpenShell,
  editions: readonly Edition[],
  fileOf: (edition: Edition) => string,
  context: Context,
  { printer, photos = 'originals', signer, language }: PrintOptions = {},
): Promise<readonly PrintedFile[]> {
  if (!printer)
    return withPrinter((one) =>
      printBooks(opened, editions, fileOf, context, {
        photos,
        printer: one,
        ...(signer ? { signer } : {}),
        ...(language ? { language } : {}),
      }),
    );
  const prepared = await inputOf(opened, photos, context, language);
  const { input, carry } = prepared;
  const who = signer ?? (await signerOf(opened, context));
  const { toldToShop } = await import('../book/redact/told.js');
  const books = await printAll(printer, editions, prepared, who === 'nobody' ? undefined : who, context);
  const printed: PrintedFile[] = [];
  for (const [at, edition] of editions.entries()) {
    const { pdf, pages, pageCount, warnings, misfits } = books[at] as PrintedBook;
    const file = fileOf(edition);
    await writeOut(opened.store.root, file, pdf);
    const { history } = opened.store;
    if (history) await keepPageMap(history.gitDir, input.fingerprint, edition, pages);
    const more = edition === 'shop' ? carry.warnings : toldToShop(opened.assessment.model, edition);
    printed.push({ edition, file, pageCount, warnings: [...warnings, ...more], misfits });
  }
  return printed;
}

/** In the order of the editions, whichever is ready first. */
async function printAll(
  printer: Printer,
  editions: readonly Edition[],
  { input, carry }: Prepared,
  signer: BookSigner | undefined,
  context: Context,
): Promise<readonly PrintedBook[]> {
  const signed = signer ? { signer } : {};
  const books: PrintedBook[] = [];
  const left = [...editions.entries()];
  const printNext = async (): Promise<void> => {
    for (let next = left.shift(); next !== undefined; next = left.shift()) {
      const [at, edition] = next;
      const progress = (text: string): void => context.progress(`${edition} edition: ${text}`);
      const fingerprint = await carry.fingerprint(edition);
      books[at] = await printer.print({ ...input, ...signed, edition, fingerprint, carry: () => carry.of(edition), progress });
    }
  };
  await Promise.all(Array.from({ length: availableParallelism() }, printNext));
  return books;
}

interface Prepared {
  readonly input: Omit<BookInput, 'edition'>;
  readonly carry: CarryMaker;
}

/** What a book is printed from, all but the edition. */
export async function inputOf(opened: OpenShell, carried: CarryPhotos, context: Context, language?: Language): Promise<Prepared> {
  const { assessment, store } = opened;
  const { shell } = assessment.model;
  const folder = path.join(store.root, 'shells', shell.id, 'photos');
  const photos = new Map(shell.photos.map((photo) => [photo.id, photo]));
  context.progress('Taking the fingerprint');
  const { fingerprint, photoHashes } = await fingerprintOf(opened);
  const { drawingsFrom } = await import('../book/project-drawings.js');
  const parts = KeptParts.of(opened);
  context.later(() => parts.save());
  const input: Prepared['input'] = {
    assessment: inLanguage(assessment, language),
    fingerprint,
    history: await historyOf(opened),
    drawings: drawingsFrom((of, make) => parts.once('drawing', of, make)),
    dirty: (opened.standing?.uncommitted.length ?? 0) > 0,
    async photoFile(id) {
      const photo = photos.get(id);
      // Only what the reader found inside the photos folder: a record's file name may say anything.
      if (!photo || !store.text.photos.has(`shells/${shell.id}/photos/${photo.file}`)) return undefined;
      return readFile(path.join(folder, photo.file)).catch(() => undefined);
    },
  };
  return { input, carry: await openCarry(opened, photoHashes, carried, parts) };
}

/** Who signs a book of this shell: the shop's key where there is one. Its time is that of the closing tag, else of the commit. */
async function signerOf(opened: OpenShell, context: Context): Promise<BookSigner | undefined> {
  const { shopKey } = await import('./shop-key.js');
  const key = await shopKey(context, opened.store.root);
  if (!key) return undefined;
  const [{ signDetached }, { keysOfStore }, { closingTags }] = await Promise.all([
    import('../signing/cms.js'),
    import('./known-keys.js'),
    import('../store/closings.js'),
  ]);
  const { certificate } = key.signer;
  if (!keysOfStore(opened.store.text, context).some(({ fingerprint }) => fingerprint === certificate.fingerprint))
    context.tell(
      `The key that signs this book is not among those of the store, so nobody can look it up there. Add it: shellbook key --add`,
    );
  const { last } = opened.standing ?? {};
  const tags = last ? ((await closingTags(opened.store.root)).get(opened.assessment.model.shell.id) ?? []) : [];
  const date = tags.find(({ commit }) => commit === last?.commit)?.date ?? last?.date;
  return {
    name: certificate.name,
    fingerprint: certificate.fingerprint,
    ...(date === undefined ? {} : { date }),
    sign: (digest) => signDetached(digest, key.signer),
  };
}

async function historyOf(opened: OpenShell): Promise<BookHistory> {
  const commits = (await opened.store.history?.commits(opened.assessment.model.shell.id)) ?? [];
  const [last] = commits;
  return {
    commits: commits.map((one) => ({
      hash: one.commit,
      date: one.date,
      author: one.author,
      message: one.subject,
      ...tagOf(one),
    })),
    ...(last ? { revision: last.commit, revisionDate: last.date, ...tagOf(last) } : {}),
  };
}

const tagOf = (commit: Commit): { tag?: string } => (commit.tags[0] === undefined ? {} : { tag: commit.tags[0] });
