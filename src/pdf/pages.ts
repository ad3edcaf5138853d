import { createHash } from 'node:crypto';
import { PDFDict, type PDFObject, PDFRawStream, PDFRef } from '@cantoo/pdf-lib';
import { Digester } from './digest.js';
import { PdfFault } from './fault.js';
import { streamBytes } from './inflate.js';
import type { PdfFile } from './read.js';

const MOST_PAGES = 20_000;
const MOST_PAGE_BYTES = 256e6;

/** Digests (SHA-256, hex) of one page. */
export interface PageDigest {
  /** Everything drawn on it: words, lines, fonts, pictures, its size. */
  readonly whole: string;
  /** The page's own instructions: which words and lines stand where. */
  readonly text: string;
  /** The files of its pictures, sorted. */
  readonly pictures: readonly string[];
  /** True where some sign of its text is in no font and shows as an empty box. */
  readonly lacksGlyph: boolean;
}

/** The pages in order; those of a damaged tree up to where it breaks are not given: it throws {@link PdfFault}. */
export function pagesOf(file: PdfFile): readonly PDFDict[] {
  const pages: PDFDict[] = [];
  const seen = new Set<number>();
  const walk = (value: PDFObject | undefined, depth: number): void => {
    if (value instanceof PDFRef) {
      if (seen.has(value.objectNumber)) throw new PdfFault('its pages run in a circle');
      seen.add(value.objectNumber);
    }
    const node = file.resolve(value);
    if (!(node instanceof PDFDict) || depth > 50 || pages.length >= MOST_PAGES)
      throw new PdfFault('its list of pages is damaged');
    if (file.nameOf(node, 'Type') === 'Page') pages.push(node);
    else for (const kid of file.list(node, 'Kids')) walk(kid, depth + 1);
  };
  walk(file.dict(file.catalog, 'Pages', 'its list of pages'), 0);
  return pages;
}

/** One for each page; undefined for a page that cannot be read. */
export function pageDigests(file: PdfFile): readonly (PageDigest | undefined)[] {
  const digester = new Digester(file);
  return pagesOf(file).map((page) => {
    try {
      return { whole: digester.of(page), ...textOf(file, page), pictures: picturesOf(file, page) };
    } catch (error) {
      if (error instanceof PdfFault) return undefined;
      throw error;
    }
  });
}

/** Glyph 0 of a font, shown by its number, two bytes a glyph: what the browser writes for a sign that no font has. */
const NO_GLYPH = /<(?:[0-9A-F]{4})*?0000(?:[0-9A-F]{4})*> Tj/u;

function textOf(file: PdfFile, page: PDFDict): Pick<PageDigest, 'text' | 'lacksGlyph'> {
  const single = file.get(page, 'Contents');
  const parts = single instanceof PDFRawStream ? [single] : file.list(page, 'Contents');
  const hash = createHash('sha256');
  let lacksGlyph = false;
  for (const part of parts) {
    const bytes = file.unpack(part, MOST_PAGE_BYTES, 'the text of a page');
    hash.update(bytes);
    lacksGlyph ||= NO_GLYPH.test(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1'));
  }
  return { text: hash.digest('hex'), lacksGlyph };
}

function picturesOf(file: PdfFile, page: PDFDict): readonly string[] {
  const resources = file.get(page, 'Resources');
  const objects = resources instanceof PDFDict ? file.get(resources, 'XObject') : undefined;
  if (!(objects instanceof PDFDict)) return [];
  return objects
    .values()
    .map((one) => file.resolve(one))
    .filter((one): one is PDFRawStream => one instanceof PDFRawStream && file.nameOf(one.dict, 'Subtype') === 'Image')
    .map((one) => createHash('sha256').update(streamBytes(one, MOST_PAGE_BYTES)).digest('hex'))
    .sort();
}
