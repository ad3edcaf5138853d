import { promisify } from 'node:util';
import { deflate } from 'node:zlib';
import { PDFNumber, PDFRef } from '@cantoo/pdf-lib';
import { markArtifacts, type TextBand } from '../../pdf/artifacts.js';
import type { PageObject } from '../../pdf/pages.js';
import { name } from '../../pdf/parse.js';
import type { RawObject } from '../../pdf/raw-object.js';
import type { PdfFile } from '../../pdf/read.js';
import { stream } from '../../pdf/write.js';
import { type BookDocument, marginsOn, type PageMargins, sideOf } from './document.js';

/** Instructions of the pages with all ornament marked as such, and whether that could be done on every page. */
export interface MarkedPages {
  readonly contents: readonly RawObject[];
  readonly whole: boolean;
}

const POINTS = 72 / 25.4;
const MOST_BYTES = 256e6;
const packed = promisify<Uint8Array, { level: number }, Buffer>(deflate);

/** A page is packed by another thread while the next one is looked at. */
export async function markPages(
  file: PdfFile,
  pages: readonly PageObject[],
  sheets: BookDocument['sheets'],
): Promise<MarkedPages> {
  const marked = pages.map(({ page }, at) => {
    const contents = page.get(name('Contents'));
    if (!(contents instanceof PDFRef)) return undefined;
    const given = Buffer.from(file.unpack(contents, MOST_BYTES, 'the text of a page'));
    const [, , width = 0, height = 0] = file
      .list(page, 'MediaBox')
      .map((side) => (side instanceof PDFNumber ? side.asNumber() : 0));
    const margins = marginsOn(sheets[width > height ? 'landscape' : 'portrait'], sideOf(at + 1));
    const found = markArtifacts(given, bandOf(margins, height));
    return found && packed(found, { level: LEVEL }).then((bytes) => asContent(contents.objectNumber, bytes));
  });
  const contents = await Promise.all(marked.filter((one) => one !== undefined));
  return { contents, whole: contents.length === pages.length };
}

/** Half as much time as the most thorough packing, for a hundredth more. */
const LEVEL = 6;

const asContent = (number: number, bytes: Uint8Array): RawObject => ({
  number,
  body: stream('/Filter /FlateDecode', bytes),
  isStream: true,
});

/** A line on the edge of the text belongs to the text. */
const EDGE_PT = 1;

const bandOf = ({ top, bottom }: PageMargins, heightPt: number): TextBand => ({
  headPt: heightPt - top * POINTS + EDGE_PT,
  footPt: bottom * POINTS - EDGE_PT,
});
