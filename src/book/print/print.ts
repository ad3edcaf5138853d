import { setImmediate } from 'node:timers/promises';
import type { Page } from 'puppeteer';
import type { PrintedBook } from '../input.js';
import type { OpenBrowser } from './chromium.js';
import { type BookDocument, textHeight, textWidth } from './document.js';
import { addStyle, assemble, emptyDrawings, measure, overfull, prepare, setCloser, unhide } from './in-page.js';
import { openWhole } from './open-page.js';
import { pageRules } from './page-rules.js';
import { type Block, type PlannedPage, paginate } from './paginate.js';
import { type HeadedPage, headedPages } from './running-heads.js';

const AS_PLANNED = { tagged: true, outline: true, preferCSSPageSize: true, printBackground: true, timeout: 0 } as const;

/** Left free at the foot of each page, mm: a print may round a line's height otherwise than the screen does. */
const ROUNDING_MM = 0.8;

/**
 * Lays out and prints, once.
 * @throws UserError where the print has another number of pages than planned
 */
export async function printDocument(
  { browser }: OpenBrowser,
  document: BookDocument,
  progress?: (text: string) => void,
): Promise<PrintedBook> {
  const page = await browser.newPage();
  try {
    return await printIn(page, document, openWhole(page, document), progress);
  } finally {
    await page.close();
  }
}

/** Prints what stands in the page, or will as soon as `opening` is done. */
export async function printIn(
  page: Page,
  document: BookDocument,
  opening: Promise<void>,
  progress?: (text: string) => void,
): Promise<PrintedBook> {
  await opening;
  const { planned, stands, names, warnings, misfits } = await layOutPages(page, document, progress);
  await page.evaluate(addStyle, pageRules(document, planned));
  progress?.(`Printing ${planned.length} pages`);
  // What the print needs besides is made ready while the browser prints.
  const [printed, { finishPdf }, carry] = await Promise.all([page.pdf(AS_PLANNED), import('./finish.js'), document.carry?.()]);
  // Laid out once more by the browser while this process finishes the file.
  const looking = overfullIn(page);
  looking.catch(() => undefined);
  await setImmediate();
  const browser = await page.browser().version();
  const finishing = { homes: stands, names, browser, ...(carry ? { carry } : {}) };
  const finished = await finishPdf(printed, planned.length, document, finishing);
  const overfull = (await looking).map((number) => `Page ${number} holds more than was measured: look at its foot.`);
  return {
    pdf: finished.pdf,
    pages: stands,
    pageCount: planned.length,
    warnings: [...warnings, ...overfull, ...finished.warnings],
    misfits,
  };
}

const widthsOf = ({ sheets }: BookDocument) => ({ portrait: textWidth(sheets.portrait), landscape: textWidth(sheets.landscape) });

/** A last page of a chapter that is no fuller than this share is one too many, if it can be had back. */
const NEARLY_EMPTY = 0.35;

/** The pages, with the blocks that they hold: chapters that end on a nearly empty page are set closer where that saves it. */
async function planPages(
  page: Page,
  document: BookDocument,
  blocks: readonly Block[],
): Promise<readonly [readonly PlannedPage[], readonly Block[]]> {
  const capacity = {
    portrait: textHeight(document.sheets.portrait) - ROUNDING_MM,
    landscape: textHeight(document.sheets.landscape) - ROUNDING_MM,
  };
  const loose = paginate(blocks, capacity);
  const ends = endsOf(loose, capacity);
  const wanting = [...ends].filter(([, { pages, share }]) => pages > 1 && share < NEARLY_EMPTY).map(([chapter]) => chapter);
  if (wanting.length === 0) return [loose, blocks];
  await page.evaluate(setCloser, wanting, true);
  const closer = [...(await page.evaluate(measure, widthsOf(document), wanting))];
  const tried = blocks.map((block) => (wanting.includes(block.chapter) ? (closer.shift() as Block) : block));
  const after = endsOf(paginate(tried, capacity), capacity);
  const inVain = wanting.filter((chapter) => (after.get(chapter)?.pages ?? 0) >= (ends.get(chapter)?.pages ?? 0));
  await page.evaluate(setCloser, inVain, false);
  const kept = blocks.map((block, at) => (inVain.includes(block.chapter) ? block : (tried[at] as Block)));
  return [paginate(kept, capacity), kept];
}

/** How many pages each chapter has, and how full its last one is. */
function endsOf(pages: readonly PlannedPage[], capacity: Readonly<Record<PlannedPage['sheet'], number>>) {
  const ends = new Map<string, { readonly pages: number; readonly share: number }>();
  for (const { chapter, sheet, usedMm } of pages)
    ends.set(chapter, { pages: (ends.get(chapter)?.pages ?? 0) + 1, share: usedMm / capacity[sheet] });
  return ends;
}

/** A document whose blocks stand in their page boxes in the browser's page. */
export interface LaidOutDocument {
  readonly planned: readonly HeadedPage[];
  /** Anchor → number of the page where it stands, from 1. */
  readonly stands: ReadonlyMap<string, number>;
  /** Anchor → the words of the heading or the id of the record that stands there. */
  readonly names: ReadonlyMap<string, string>;
  readonly warnings: readonly string[];
  /** What no page holds at its size; among the warnings too. */
  readonly misfits: readonly string[];
}

/**
 * Measures the document that stands in a page of the browser, and moves its blocks into page boxes. On the screen, where nobody looks,
 * the document is hidden but while it is measured: the browser would lay out and paint the whole of it whenever some of it changes.
 */
export async function layOutPages(
  page: Page,
  document: BookDocument,
  progress?: (text: string) => void,
): Promise<LaidOutDocument> {
  const warnings = [...document.warnings];
  const { doubled } = await page.evaluate(prepare);
  for (const id of doubled) warnings.push(`Anchor \`${id}\` is printed twice: its page number is that of the last one.`);
  progress?.('Measuring');
  await page.emulateMediaType('print');
  const blocks = await page.evaluate(measure, widthsOf(document));
  const laid = await planPages(page, document, blocks);
  const planned = headedPages(...laid, document);
  const misfits = shrunk(...laid);
  warnings.push(...misfits);
  const stands = await page.evaluate(assemble, planned as Parameters<typeof assemble>[0]);
  await page.emulateMediaType();
  await page.evaluate(unhide);
  return {
    planned,
    stands: new Map(stands.map(([anchor, number]) => [anchor, number])),
    names: new Map(stands.flatMap(([anchor, , words]) => (words ? [[anchor, words] as const] : []))),
    warnings,
    misfits,
  };
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

/** What no page holds at its size: a drawing in it has another scale than it says. */
function shrunk(pages: readonly PlannedPage[], blocks: readonly Block[]): readonly string[] {
  const told = (at: number, what: string, part: number): string =>
    `Page ${at + 1} holds something ${what} than a page, printed at ${Math.round(part * 100)} %: scales on it do not hold.`;
  return pages.flatMap((page, at) =>
    page.pieces.flatMap(({ block, shrink }) => {
      const { narrowed = 1 } = blocks[block] ?? {};
      return [
        ...(shrink === undefined ? [] : [told(at, 'taller', shrink)]),
        ...(narrowed < WHOLE && blocks[block]?.kind === 'solid' ? [told(at, 'wider', narrowed)] : []),
      ];
    }),
  );
}
/** A difference that no ruler shows. */
const WHOLE = 0.998;
