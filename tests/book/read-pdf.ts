/** Reads a PDF back with pdf.js, for tests. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { type MarkedItem, type PrintedTable, type Tag, tablesOfPage } from '../support/figures/printed-tables.js';

export interface ReadLink {
  /** Name of the destination. */
  readonly to: string;
  /** Page that it leads to, from 1. */
  readonly page: number;
  /** Words under the link's box. */
  readonly text: string;
}
export interface OutlineItem {
  readonly title: string;
  readonly items: readonly OutlineItem[];
}
/** One page: its size in points, its words in order and its links. */
export interface ReadPage {
  readonly size: readonly [number, number];
  readonly text: string;
  readonly links: readonly ReadLink[];
  /** Each piece of text with the size of its letters, points. */
  readonly pieces: readonly { readonly text: string; readonly sizePt: number }[];
}
export interface ReadPdf {
  readonly pages: readonly ReadPage[];
  /** Empty where they were not asked for. */
  readonly tables: readonly PrintedTable[];
  readonly outline: readonly OutlineItem[];
  readonly tagged: boolean;
  readonly title: string;
  readonly language: string;
  readonly created: string;
  /** Share of a page's width where the words that reach farthest right end. */
  readonly widest: number;
}

interface Word {
  readonly str: string;
  readonly transform: readonly number[];
  readonly width: number;
}

/** With `tables`, what a screen reader reads as tables as well. */
export async function readPdf(bytes: Uint8Array, { tables: wanted = false } = {}): Promise<ReadPdf> {
  const task = getDocument({ data: Uint8Array.from(bytes), isEvalSupported: false, verbosity: 0 });
  const document = await task.promise;
  try {
    const pages: ReadPage[] = [];
    const tables: PrintedTable[] = [];
    let heading = '';
    let widest = 0;
    const seen = new Map<string, number>();
    const pageOf = async (given: string | readonly unknown[]): Promise<number> => {
      const dest = typeof given === 'string' ? await document.getDestination(given) : given;
      return dest ? (await document.getPageIndex(dest[0] as Parameters<typeof document.getPageIndex>[0])) + 1 : 0;
    };
    for (let number = 1; number <= document.numPages; number++) {
      const page = await document.getPage(number);
      const { items } = await page.getTextContent({ includeMarkedContent: wanted });
      const words = items.filter((item) => 'str' in item) as unknown as Word[];
      if (wanted) {
        const found = tablesOfPage(number, (await page.getStructTree()) as Tag | null, items as readonly MarkedItem[], heading);
        heading = found.heading;
        tables.push(...found.tables);
      }
      const [left = 0, bottom = 0, right = 1, above = 1] = page.view;
      for (const { transform, width, str } of words) {
        // A turned word runs up the page.
        if (str.trim() === '' || transform[1] !== 0) continue;
        widest = Math.max(widest, ((transform[4] ?? 0) + width - left) / (right - left));
      }
      const links: ReadLink[] = [];
      for (const annotation of await page.getAnnotations()) {
        if (annotation.subtype !== 'Link' || !annotation.dest) continue;
        const to = typeof annotation.dest === 'string' ? annotation.dest : '';
        const target = seen.get(to) ?? (await pageOf(annotation.dest));
        if (to !== '') seen.set(to, target);
        links.push({ to: decodeURIComponent(to), page: target, text: under(words, annotation.rect) });
      }
      pages.push({
        size: [right - left, above - bottom],
        text: words
          .map((word) => word.str)
          .join(' ')
          .replace(/\s+/gu, ' '),
        links,
        pieces: words.map(({ str, transform: [a = 0, b = 0] }) => ({ text: str.trim(), sizePt: Math.hypot(a, b) })),
      });
    }
    const { info } = await document.getMetadata();
    const told = info as { Title?: string; Language?: string; CreationDate?: string };
    return {
      pages,
      tables,
      outline: ((await document.getOutline()) ?? []) as unknown as OutlineItem[],
      tagged: (await document.getMarkInfo())?.Marked === true,
      title: told.Title ?? '',
      language: told.Language ?? '',
      created: told.CreationDate ?? '',
      widest,
    };
  } finally {
    await task.destroy();
  }
}

/** Words whose beginning lies within a link's box. */
function under(words: readonly Word[], [x0, y0, x1, y1]: readonly number[]): string {
  const inside = words.filter(({ transform: [, , , , x, y] }) => {
    if (x === undefined || y === undefined) return false;
    return x >= (x0 ?? 0) - 1 && x <= (x1 ?? 0) && y >= (y0 ?? 0) - 1 && y <= (y1 ?? 0);
  });
  return inside
    .map((word) => word.str)
    .join('')
    .trim();
}

/** The files that travel inside, by name. */
export async function readAttachments(bytes: Uint8Array): Promise<ReadonlyMap<string, Uint8Array>> {
  const task = getDocument({ data: Uint8Array.from(bytes), isEvalSupported: false, verbosity: 0 });
  try {
    const found = (await (await task.promise).getAttachments()) as Record<
      string,
      { rawFilename: string; content: Uint8Array }
    > | null;
    return new Map(Object.values(found ?? {}).map(({ rawFilename, content }) => [rawFilename, content]));
  } finally {
    await task.destroy();
  }
}
