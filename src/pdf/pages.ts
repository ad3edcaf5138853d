import { createHash } from 'node:crypto';
import { PDFArray, PDFDict, type PDFObject, PDFRawStream, PDFRef } from '@cantoo/pdf-lib';
import { Digester, DRAWN, EVERYTHING } from './digest.js';
import { PdfFault } from './fault.js';
import { lacksGlyph } from './glyphs.js';
import { streamBytes } from './inflate.js';
import { name } from './parse.js';
import type { PdfFile } from './read.js';
import { signatureField } from './signature-field.js';

const MOST_PAGES = 20_000;
const MOST_PAGE_BYTES = 256e6;

/** Digests (SHA-256, hex) of one page. */
export interface PageDigest {
  /** Everything of it: words, lines, fonts, pictures, links, notes, its size, and what it inherits. Not a signature's field. */
  readonly whole: string;
  /** The page's own instructions: which words and lines stand where. */
  readonly text: string;
  /** The files of its pictures, sorted. */
  readonly pictures: readonly string[];
  /** True where some sign of its text is in no font and shows as an empty box. */
  readonly lacksGlyph: boolean;
}

/** A page of the file, and its object's number where it has one. */
export interface PageObject {
  readonly page: PDFDict;
  readonly number: number | undefined;
  /** What it has from the list of pages above it (ISO 32000-2, 7.7.3.4), nearest first. */
  readonly above: readonly PDFDict[];
}

/** The pages in order; those of a damaged tree up to where it breaks are not given: it throws {@link PdfFault}. */
export const pagesOf = (file: PdfFile): readonly PDFDict[] => pageObjects(file).map(({ page }) => page);

export function pageObjects(file: PdfFile): readonly PageObject[] {
  const pages: PageObject[] = [];
  const seen = new Set<number>();
  const walk = (value: PDFObject | undefined, above: readonly PDFDict[]): void => {
    file.budget.spend('node');
    const number = value instanceof PDFRef ? value.objectNumber : undefined;
    if (number !== undefined) {
      if (seen.has(number)) throw new PdfFault('its pages run in a circle');
      seen.add(number);
    }
    const node = file.resolve(value);
    if (!(node instanceof PDFDict) || above.length > 50 || pages.length >= MOST_PAGES)
      throw new PdfFault('its list of pages is damaged');
    if (file.nameOf(node, 'Type') === 'Page') pages.push({ page: node, number, above });
    else for (const kid of file.list(node, 'Kids')) walk(kid, [node, ...above]);
  };
  walk(file.catalog.get(name('Pages')), []);
  return pages;
}

/** `page 3` for each page's object: what leads to a page counts as its number. */
export const pageWords = (pages: readonly PageObject[]): ReadonlyMap<number, string> =>
  new Map(pages.flatMap(({ number }, i) => (number === undefined ? [] : [[number, `page ${i + 1}`] as const])));

/**
 * One for each page; undefined for a page that cannot be read. `drawn`: its whole is what is drawn on it, without links, notes and what
 * it inherits, as books were sealed before.
 */
export function pageDigests(file: PdfFile, drawn = false): readonly (PageDigest | undefined)[] {
  const pages = pageObjects(file);
  const digester = new Digester(file, drawn ? DRAWN : { ...EVERYTHING, words: pageWords(pages) });
  const streams = new Map<number, ReadStream>();
  return pages.map((one) => {
    try {
      const { page } = one;
      const seen = { ...textOf(file, page, streams), pictures: picturesOf(file, page) };
      return { whole: drawn ? digester.of(page) : digester.ofEntries(wholeEntries(file, one)), ...seen };
    } catch (error) {
      if (error instanceof PdfFault && file.budget.left > 0) return undefined;
      throw error;
    }
  });
}

const INHERITED = ['Resources', 'MediaBox', 'CropBox', 'Rotate'];

/** A page's entries with what it inherits, and without the field of a signature, which the signature itself covers. */
function wholeEntries(file: PdfFile, { page, above }: PageObject): ReadonlyMap<string, PDFObject> {
  const entries = new Map(page.entries().map(([key, value]) => [key.decodeText(), value]));
  for (const key of INHERITED) {
    const from = entries.has(key) ? undefined : above.find((one) => one.has(name(key)));
    if (from) entries.set(key, from.get(name(key)) as PDFObject);
  }
  const field = signatureField(file)?.number;
  const notes = file.list(page, 'Annots').filter((one) => !(one instanceof PDFRef && one.objectNumber === field));
  const list = PDFArray.withContext(page.context);
  for (const one of notes) list.push(one);
  entries.delete('Annots');
  if (notes.length > 0) entries.set('Annots', list);
  return entries;
}

interface ReadStream {
  readonly bytes: number;
  readonly sha256: string;
  readonly lacksGlyph: boolean;
}

/** Of the page's own instructions. Streams of their own are unpacked once, however many pages show them. */
function textOf(file: PdfFile, page: PDFDict, known: Map<number, ReadStream>): Pick<PageDigest, 'text' | 'lacksGlyph'> {
  const given = page.get(name('Contents'));
  const resolved = file.resolve(given);
  const parts = resolved instanceof PDFRawStream ? [given as PDFObject] : file.list(page, 'Contents');
  const [only, ...more] = parts;
  const number = only instanceof PDFRef && more.length === 0 ? only.objectNumber : undefined;
  const before = number === undefined ? undefined : known.get(number);
  if (before) return { text: before.sha256, lacksGlyph: before.lacksGlyph };
  const hash = createHash('sha256');
  let lacking = false;
  let size = 0;
  for (const part of parts) {
    const bytes = file.unpack(part, MOST_PAGE_BYTES, 'the text of a page');
    hash.update(bytes);
    size += bytes.length;
    lacking ||= lacksGlyph(bytes);
  }
  const read = { bytes: size, sha256: hash.digest('hex'), lacksGlyph: lacking };
  if (number !== undefined) known.set(number, read);
  return { text: read.sha256, lacksGlyph: lacking };
}

function picturesOf(file: PdfFile, page: PDFDict): readonly string[] {
  const resources = file.get(page, 'Resources');
  const objects = resources instanceof PDFDict ? file.get(resources, 'XObject') : undefined;
  if (!(objects instanceof PDFDict)) return [];
  return objects
    .values()
    .map((one) => file.resolve(one))
    .filter((one): one is PDFRawStream => one instanceof PDFRawStream && file.nameOf(one.dict, 'Subtype') === 'Image')
    .map((one) =>
      createHash('sha256')
        .update(streamBytes(one, MOST_PAGE_BYTES, file.budget))
        .digest('hex'),
    )
    .sort();
}
