import { setImmediate } from 'node:timers/promises';
import type { Page } from 'puppeteer';
import type { Carry } from '../../archive/carry.js';
import { pagesOf } from '../../archive/pdf/pages.js';
import { PdfFile } from '../../archive/pdf/read.js';
import { CannotDo } from '../../cannot.js';
import type { PrintedBook } from '../input.js';
import type { OpenBrowser } from './chromium.js';
import { type BookDocument, textHeight, textWidth } from './document.js';
import { finishPdf } from './finish.js';
import { addStyle, assemble, emptyDrawings, measure, overfull, prepare, unhide } from './in-page.js';
import { pageRules } from './page-rules.js';
import { type PlannedPage, paginate } from './paginate.js';

/** No machine has this name, and nothing is asked of it: every answer comes from memory. */
const HERE = 'http://book.invalid';

/** Until it is printed; see {@link layOut}. */
const HIDDEN = '<style>@media screen { body { display: none } }</style>';

/** Left free at the foot of each page, mm: a print may round a line's height otherwise than the screen does. */
const ROUNDING_MM = 0.8;

/**
 * Lays out and prints, once.
 * @throws CannotDo where the print has another number of pages than planned
 */
export async function printDocument(
  { browser }: OpenBrowser,
  document: BookDocument,
  progress?: (text: string) => void,
): Promise<PrintedBook> {
  const page = await browser.newPage();
  try {
    let carry: Promise<Carry> | undefined;
    const { planned, stands, warnings } = await layOut(page, document, progress, () => {
      carry = document.carry?.();
      // Asked for at the end; until then nobody may hear of it.
      carry?.catch(() => undefined);
    });
    await page.evaluate(addStyle, pageRules(document, planned));
    progress?.(`Printing ${planned.length} pages`);
    const printed = await page.pdf({
      tagged: true,
      outline: true,
      preferCSSPageSize: true,
      printBackground: true,
      timeout: 0,
    });
    // Laid out once more by the browser while this process finishes the file.
    const looking = overfullIn(page);
    looking.catch(() => undefined);
    await setImmediate();
    const file = PdfFile.open(printed);
    const pageCount = pagesOf(file).length;
    if (pageCount !== planned.length) {
      throw new CannotDo(
        `The book came out with ${pageCount} pages where ${planned.length} were planned, so its page numbers would be wrong; it was ` +
          'not written. Print with the packaged browser (unset PUPPETEER_EXECUTABLE_PATH), and report this if it stays.',
      );
    }
    const finished = await finishPdf(file, document, stands, await carry);
    const overfull = (await looking).map((number) => `Page ${number} holds more than was measured: look at its foot.`);
    return { pdf: finished.pdf, pages: stands, pageCount, warnings: [...warnings, ...overfull, ...finished.warnings] };
  } finally {
    await page.close();
  }
}

/** A document whose blocks stand in their page boxes in the browser's page. */
export interface LaidOut {
  readonly planned: readonly PlannedPage[];
  /** Anchor → number of the page where it stands, from 1. */
  readonly stands: ReadonlyMap<string, number>;
  readonly warnings: readonly string[];
}

/**
 * Opens a document in a fresh page of the browser, measures it, and moves its blocks into page boxes. `meanwhile` is called when the
 * browser has the document and reads it, which takes it seconds. On the screen, where nobody looks, the document is hidden but while it
 * is measured: the browser would lay out and paint the whole of it whenever some of it changes.
 */
export async function layOut(
  page: Page,
  document: BookDocument,
  progress?: (text: string) => void,
  meanwhile?: () => void,
): Promise<LaidOut> {
  const warnings = [...document.warnings];
  await openQuietly(page, document, meanwhile);
  // Some builds of this program name inner functions through a helper that the page has not.
  await page.evaluate('globalThis.__name = (given) => given');
  const { doubled } = await page.evaluate(prepare);
  for (const id of doubled) warnings.push(`Anchor \`${id}\` is printed twice: its page number is that of the last one.`);
  progress?.('Measuring');
  await page.emulateMediaType('print');
  const blocks = await page.evaluate(measure, {
    portrait: textWidth(document.sheets.portrait),
    landscape: textWidth(document.sheets.landscape),
  });
  const planned = paginate(blocks, {
    portrait: textHeight(document.sheets.portrait) - ROUNDING_MM,
    landscape: textHeight(document.sheets.landscape) - ROUNDING_MM,
  });
  warnings.push(...shrunk(planned));
  const stands = await page.evaluate(assemble, planned as Parameters<typeof assemble>[0]);
  await page.emulateMediaType();
  await page.evaluate(unhide);
  return { planned, stands: new Map(stands), warnings };
}

/** All three are asked at once: the answers wait until this process has time for them. */
async function overfullIn(page: Page): Promise<readonly number[]> {
  const [, , numbers] = await Promise.all([
    page.evaluate(emptyDrawings),
    page.emulateMediaType('print'),
    page.evaluate(overfull),
  ]);
  return numbers;
}

/** Opens the document with scripts of the page off; whatever it asks for comes from memory or is refused. */
async function openQuietly(page: Page, document: BookDocument, opened?: () => void): Promise<void> {
  const body = document.html.replace('</head>', `${HIDDEN}</head>`);
  await page.setJavaScriptEnabled(false);
  await page.setRequestInterception(true);
  page.on('request', (request) => {
    const url = request.url();
    const path = url.startsWith(`${HERE}/`) ? url.slice(HERE.length) : undefined;
    const picture = path === undefined ? undefined : document.pictures.get(path);
    if (path === '/' && request.isNavigationRequest()) {
      void request.respond({ status: 200, contentType: 'text/html; charset=utf-8', body }).then(opened);
    } else if (picture) {
      void request.respond({ status: 200, contentType: picture.type, body: picture.bytes });
    } else if (url.startsWith('data:')) {
      void request.continue();
    } else {
      void request.abort('accessdenied');
    }
  });
  await page.goto(`${HERE}/`, { waitUntil: 'load', timeout: 0 });
  // What is hidden asks for no typeface, and must be measured in its own.
  await page.evaluate('Promise.all([...document.fonts].map((face) => face.load())).then(() => undefined)');
}

function shrunk(pages: readonly PlannedPage[]): readonly string[] {
  return pages.flatMap((page, at) =>
    page.pieces
      .filter((piece) => piece.shrink !== undefined)
      .map(
        (piece) =>
          `Page ${at + 1} holds something taller than a page, printed at ${Math.round((piece.shrink as number) * 100)} %.`,
      ),
  );
}
