import { loadStore } from '../model/load.js';
import type { StoreText } from '../model/load-types.js';
import { PdfFault } from '../pdf/fault.js';
import { type PageDigest, pageDigests } from '../pdf/pages.js';
import { identifierOf, isSealed } from '../pdf/seal.js';
import { fingerprint } from './fingerprint.js';
import type { Manifest } from './manifest.js';
import { type CarriedBook, type CarriedFile, carriedPhoto, carriedRecords } from './open-book.js';

/** One thing that is not as it should be. */
export interface Difference {
  /** What of the book, or a record of its shell. */
  readonly part: 'manifest' | 'file' | 'fingerprint' | 'photo' | 'picture' | 'page' | 'record' | 'seal';
  /** Which: a path, a page's number, a record's id. */
  readonly name: string;
  /** A whole sentence. */
  readonly message: string;
}

/** The record files of a book as a store, with what its manifest says of the photos. */
export const storeOfBook = (name: string, files: readonly CarriedFile[], { photos }: Manifest): StoreText => ({
  root: name,
  files: new Map(files.flatMap(({ path, bytes }) => (bytes ? [[path, textOf(bytes)] as const] : []))),
  photos: new Map(photos.map(({ path, bytes }) => [path, bytes])),
});

/** As the reader of a store does: without the byte order mark that an editor put first. */
const textOf = (bytes: Uint8Array): string => new TextDecoder('utf-8').decode(bytes);

export const photoHashesOf = ({ photos }: Manifest): ReadonlyMap<string, string> =>
  new Map(photos.map(({ path, sha256 }) => [path, sha256]));

/**
 * Everything of a book that differs from what it was when it was printed, by the digests that it carries: manifest, record files,
 * photos, fingerprint, each page and its pictures; and where all of these are whole, any other byte.
 */
export function verifyItself(book: CarriedBook): readonly Difference[] {
  if ('fault' in book.manifest) {
    return [{ part: 'manifest', name: 'manifest', message: `The book is damaged: ${book.manifest.fault}.` }];
  }
  const { manifest } = book.manifest;
  const found = [...manifestDifferences(book), ...fileDifferences(book, manifest), ...pageDifferences(book, manifest)];
  if (found.length > 0 || isSealed(book.file)) return found;
  const message =
    'The file is not the one that was printed: its records, photos and pages are as printed, but other bytes of it are not. ' +
    'It was damaged, or another program saved it again.';
  return [{ part: 'seal', name: 'file', message }];
}

function manifestDifferences(book: CarriedBook): readonly Difference[] {
  if (identifierOf(book.file)[0] === book.manifestDigest) return [];
  return [
    {
      part: 'manifest',
      name: 'manifest',
      message: 'The manifest is not the one that the book was printed with: it does not fit the identifier of the file.',
    },
  ];
}

function fileDifferences(book: CarriedBook, manifest: Manifest): readonly Difference[] {
  const records = carriedRecords(book, manifest);
  const damaged = records.flatMap(({ path, fault }): readonly Difference[] =>
    fault ? [{ part: 'file', name: path, message: `Record file ${path} ${fault}.` }] : [],
  );
  const photos = manifest.photos.flatMap((photo): readonly Difference[] => {
    const fault = photo.carried ? carriedPhoto(book, photo).fault : undefined;
    return fault ? [{ part: 'photo', name: photo.path, message: `Photo ${photo.id ?? ''} (${photo.path}) ${fault}.` }] : [];
  });
  // What an edition withholds counts in the fingerprint too: only a whole record can be counted again.
  if (damaged.length > 0 || manifest.edition !== 'shop') return [...damaged, ...photos];
  const shell = loadStore(storeOfBook('book', records, manifest)).shells.get(manifest.shell);
  if (shell && fingerprint(shell.model, photoHashesOf(manifest)) === manifest.fingerprint) return photos;
  const message = 'The fingerprint is not that of the records in the book.';
  return [{ part: 'fingerprint', name: manifest.fingerprint, message }, ...photos];
}

function pageDifferences(book: CarriedBook, manifest: Manifest): readonly Difference[] {
  let pages: readonly (PageDigest | undefined)[];
  try {
    pages = pageDigests(book.file);
  } catch (error) {
    if (!(error instanceof PdfFault)) throw error;
    return [{ part: 'page', name: 'all', message: `The pages cannot be read: ${error.message}.` }];
  }
  const found: Difference[] = [];
  if (pages.length !== manifest.pages.length) {
    const message = `The book has ${pages.length} pages, expected ${manifest.pages.length}.`;
    found.push({ part: 'page', name: 'all', message });
  }
  manifest.pages.forEach((expected, i) => {
    const page = pages[i];
    if (i < pages.length && page?.whole !== expected.sha256) found.push(pageDifference(i + 1, page, expected, manifest.pictures));
  });
  return found;
}

function pageDifference(
  number: number,
  page: PageDigest | undefined,
  expected: Manifest['pages'][number],
  photos: Manifest['pictures'],
): Difference {
  const name = String(number);
  const says = (message: string): Difference => ({ part: 'page', name, message: `Page ${number}: ${message}.` });
  if (!page) return says('it is damaged and cannot be read');
  if (page.text !== expected.text_sha256) return says('its words or lines are not as printed');
  const changed = expected.pictures.find((picture) => !page.pictures.includes(picture));
  if (changed === undefined) return says('its fonts, colours or size are not as printed');
  const photo = photos[changed];
  return { ...says(`its picture${photo ? ` of photo ${photo}` : ''} is not as printed`), part: 'picture' };
}
