import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Manifest } from '../archive/manifest.js';
import { openBook } from '../archive/open-book.js';
import { type BookDifference, type FoundPages, pageDifference } from '../archive/verify.js';
import type { BookSigner } from '../book/input.js';
import { laidOutAt } from '../store/laid-out-at.js';
import { UserError } from '../user-error.js';
import { LANGUAGES, type Language } from '../words/index.js';
import { COMMIT } from './book-and-store.js';
import type { Context } from './context.js';
import { type OpenStore, openShell, openStoreFor } from './open.js';
import { printBooks, withPrinter } from './print-books.js';
import { programBuild } from './program-build.js';

/** What came of printing a book's pages again. */
export type PrintedAgain = { readonly differences: readonly BookDifference[]; readonly pages: number } | { readonly why: string };

/**
 * Prints the book's edition again from the store as it stood at the book's revision, and compares every page with those in the file.
 * Only the same program with the same browser prints the same pages; else it says why not.
 */
export async function printAgain(
  found: FoundPages,
  manifest: Manifest,
  signer: BookSigner | undefined,
  store: OpenStore,
  context: Context,
): Promise<PrintedAgain> {
  const why = whyNot(manifest, store);
  if (why !== undefined) return { why };
  const folder = await mkdtemp(path.join(tmpdir(), 'shellbook-again-'));
  try {
    const wanted = { commit: manifest.revision as string, shell: manifest.shell, withTag: manifest.tag !== null };
    const root = await laidOutAt(store.root, wanted, path.join(folder, 'store'));
    const fresh = await printedFrom(
      root,
      manifest,
      { signer, language: languageOf(found) },
      path.join(folder, 'book.pdf'),
      context,
    );
    return 'why' in fresh ? fresh : { pages: fresh.manifest.pages.length, differences: comparePages(found, fresh.manifest) };
  } catch (error) {
    if (error instanceof UserError) return { why: error.message };
    throw error;
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** End of a sentence that begins with "pages not compared:". */
function whyNot({ printed_by: by, revision, uncommitted }: Manifest, { history }: OpenStore): string | undefined {
  if (!by) return 'printed by an earlier version of this program, which did not say what printed them';
  const own = programBuild();
  if (by.program !== own.program || by.build !== own.build || by.platform !== own.platform)
    return `printed by ${by.program} (${by.build.slice(0, 8)}) on ${by.platform}, and this is ${own.program} (${own.build.slice(0, 8)}) on ${own.platform}`;
  if (uncommitted.length > 0) return 'printed from records with changes that no commit has';
  if (revision === null || !COMMIT.test(revision) || !history) return 'printed from records that the store has no commit of';
  return undefined;
}

/** The language that the book says it is in: its owner may have asked for another than the shop's. */
const languageOf = ({ language }: FoundPages): Language | undefined => LANGUAGES.find((one) => one === language);

async function printedFrom(
  root: string,
  manifest: Manifest,
  { signer, language }: { readonly signer: BookSigner | undefined; readonly language: Language | undefined },
  file: string,
  context: Context,
): Promise<{ readonly manifest: Manifest } | { readonly why: string }> {
  const { edition, shell, printed_by: by } = manifest;
  const there = { ...context, settings: { ...context.settings, store: root } };
  return withPrinter(async (printer) => {
    const browser = await printer.browser();
    if (browser !== by?.browser) return { why: `printed by ${by?.browser}, and the browser here is ${browser}` };
    const opened = await openShell(await openStoreFor(there), shell, there);
    await printBooks(opened, [edition], () => file, there, {
      printer,
      photos: 'hashes',
      signer: signer ?? 'nobody',
      ...(language ? { language } : {}),
    });
    const { readFile } = await import('node:fs/promises');
    const read = openBook(await readFile(file)).manifest;
    if ('fault' in read) throw new UserError(`the book that was printed again has a manifest that ${read.fault}`);
    return read;
  });
}

function comparePages(found: FoundPages, again: Manifest): readonly BookDifference[] {
  const differences: BookDifference[] = [];
  if (found.pages.length !== again.pages.length) {
    const message = `The book has ${found.pages.length} pages, and ${again.pages.length} when it is printed again from the store.`;
    differences.push({ part: 'page', name: 'all', message });
  }
  again.pages.forEach((expected, i) => {
    const page = found.pages[i];
    if (page && page.whole !== expected.sha256) differences.push(pageDifference(i + 1, page, expected, again.pictures));
  });
  if (found.document !== again.document_sha256) {
    const message = 'The bookmarks, named places, page labels or title are not those of the book printed again from the store.';
    differences.push({ part: 'document', name: 'document', message });
  }
  return differences;
}
