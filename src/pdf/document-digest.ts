import { createHash } from 'node:crypto';
import { PDFDict, type PDFObject, PDFRef } from '@cantoo/pdf-lib';
import { Digester, EVERYTHING } from './digest.js';
import { PdfFault } from './fault.js';
import { type PageObject, pageWords } from './pages.js';
import { name } from './parse.js';
import type { PdfFile } from './read.js';

/**
 * Of the catalogue that which has a digest elsewhere (pages, attachments, the signature), or that a program which saves a file again
 * writes anew (metadata), or that only a screen reader is told (tags).
 */
const ELSEWHERE = new Set([
  ...['Type', 'Version', 'Pages', 'Outlines', 'Names', 'AF', 'AcroForm', 'Perms', 'Metadata', 'StructTreeRoot', 'MarkInfo'],
]);

/** In words, what {@link documentDigest} and the pages’ digests leave out. */
export const NOT_IN_DIGESTS: readonly string[] = [
  'the tags that a screen reader reads',
  'the metadata of the file (dates, programs)',
];

/**
 * SHA-256, hex, of what belongs to no one page: bookmarks, named places, page labels, the language, how the file is opened, its title and
 * author, whatever else the catalogue holds. `to` where catalogue and information are not yet those of the file.
 */
export function documentDigest(file: PdfFile, pages: readonly PageObject[], to: Written = writtenIn(file)): string {
  const { catalog, info, added } = to;
  const words = pageWords(pages);
  const digester = new Digester(file, { ...EVERYTHING, words, ...(added ? { added } : {}) });
  const entries = catalog.entries().map(([key, value]) => [key.decodeText(), value] as const);
  const names = file.get(catalog, 'Names');
  const places = names instanceof PDFDict ? names.entries().filter(([key]) => key.decodeText() !== 'EmbeddedFiles') : [];
  const hash = createHash('sha256');
  hash.update(digester.ofEntries(entries.filter(([key]) => !ELSEWHERE.has(key))));
  hash.update(digester.ofEntries(places.map(([key, value]) => [key.decodeText(), value] as const)));
  hash.update(digester.ofEntries(entriesOf(info, ['Title', 'Author'])));
  for (const line of bookmarks(file, catalog, digester)) hash.update(line);
  return hash.digest('hex');
}

/** Catalogue and information of a file, and objects that are no part of it yet. */
export interface Written {
  readonly catalog: PDFDict;
  readonly info: PDFDict | undefined;
  readonly added?: ReadonlyMap<number, PDFObject>;
}

function writtenIn(file: PdfFile): Written {
  const info = file.resolve(file.xref.trailer.get(name('Info')));
  return { catalog: file.catalog, info: info instanceof PDFDict ? info : undefined };
}

const entriesOf = (dict: PDFDict | undefined, keys: readonly string[]): readonly (readonly [string, PDFObject])[] =>
  keys.flatMap((key) => {
    const value = dict?.get(name(key));
    return value === undefined ? [] : [[key, value] as const];
  });

const BOOKMARK_KEYS = ['Title', 'Dest', 'A', 'C', 'F', 'Count'];

/** The bookmarks (ISO 32000-2, 12.3.3) one after the other, each with its level. */
function* bookmarks(file: PdfFile, catalog: PDFDict, digester: Digester): Iterable<string> {
  const top = file.get(catalog, 'Outlines');
  if (!(top instanceof PDFDict)) return;
  const seen = new Set<number>();
  const waiting: { readonly at: PDFObject | undefined; readonly level: number }[] = [{ at: top.get(name('First')), level: 0 }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { at, level } = next;
    if (!(at instanceof PDFRef)) continue;
    if (seen.has(at.objectNumber)) throw new PdfFault('its bookmarks run in a circle');
    seen.add(at.objectNumber);
    file.budget.spend('node');
    const one = file.resolve(at);
    if (!(one instanceof PDFDict)) throw new PdfFault('its bookmarks are damaged');
    yield `${level} ${digester.ofEntries(entriesOf(one, BOOKMARK_KEYS))}\n`;
    waiting.push({ at: one.get(name('Next')), level }, { at: one.get(name('First')), level: level + 1 });
  }
}
