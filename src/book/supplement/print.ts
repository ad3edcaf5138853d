import { createHash } from 'node:crypto';
import type { Page } from 'puppeteer';
import { bookDocument } from '../document.js';
import type { BookInput, PrintedBook } from '../input.js';
import type { OpenBrowser } from '../print/chromium.js';
import type { BookDocument } from '../print/document.js';
import { openWhole } from '../print/open-page.js';
import { type LaidOutDocument, layOutPages, printDocument } from '../print/print.js';
import { compareBooks, type LaidOutBook, type SupplementChanges } from './compare.js';
import { supplementDocument } from './document.js';
import { readPages, takePages } from './in-page.js';

export interface PrintedSupplement extends PrintedBook {
  readonly changes: SupplementChanges;
}

/**
 * The pages of one edition that are not as they were in an earlier revision, with the list of what they replace. Undefined where every
 * page is the same.
 */
export async function printSupplement(
  browser: OpenBrowser,
  old: BookInput,
  input: BookInput,
): Promise<PrintedSupplement | undefined> {
  input.progress?.('Laying out the earlier revision');
  const before = await readBook(browser, await bookDocument(old));
  input.progress?.('Laying out');
  const book = await bookDocument(input);
  const page = await browser.browser.newPage();
  let changes: SupplementChanges;
  let document: BookDocument;
  try {
    const { planned, stands } = await openAndLayOut(page, book);
    const read = await page.evaluate(readPages, { pictures: pictureDigests(book) });
    const after: LaidOutBook = { pages: read.map((one, at) => ({ ...one, chapter: planned[at]?.chapter ?? '' })), stands };
    changes = compareBooks(before, after);
    if (changes.pages.length === 0 && changes.takeOut.length === 0) return undefined;
    const labels = Object.fromEntries([...stands].map(([anchor, number]) => [anchor, changes.labels[number - 1] ?? '']));
    const known = before.pages.flatMap((one) => one.parts);
    const taken = await page.evaluate(takePages, { numbers: changes.pages.map((one) => one.number), known, labels });
    document = supplementDocument(old, input, book, changes, taken);
  } finally {
    await page.close();
  }
  return { ...(await printDocument(browser, document, input.progress)), changes };
}

async function readBook({ browser }: OpenBrowser, book: BookDocument): Promise<LaidOutBook> {
  const page = await browser.newPage();
  try {
    const { planned, stands } = await openAndLayOut(page, book);
    const read = await page.evaluate(readPages, { pictures: pictureDigests(book) });
    return { pages: read.map((one, at) => ({ ...one, chapter: planned[at]?.chapter ?? '' })), stands };
  } finally {
    await page.close();
  }
}

async function openAndLayOut(page: Page, book: BookDocument): Promise<LaidOutDocument> {
  await openWhole(page, book);
  return layOutPages(page, book);
}

const pictureDigests = (book: BookDocument): Readonly<Record<string, string>> =>
  Object.fromEntries([...book.pictures].map(([path, { bytes }]) => [path, createHash('sha256').update(bytes).digest('hex')]));
