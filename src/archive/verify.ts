import { loadStore } from '../model/load.js';
import type { StoreText } from '../model/load-types.js';
import { documentDigest } from '../pdf/document-digest.js';
import { PdfFault } from '../pdf/fault.js';
import { foreignParts } from '../pdf/foreign.js';
import { type PageDigest, type PageObject, pageDigests, pageObjects } from '../pdf/pages.js';
import { identifierOf } from '../pdf/seal.js';
import type { SealCheck } from './check-seal.js';
import { fingerprint } from './fingerprint.js';
import { MANIFEST, type Manifest } from './manifest.js';
import { type CarriedBook, type CarriedFile, carriedPhoto, carriedRecords } from './open-book.js';

/** One thing that is not as it should be. */
export interface BookDifference {
  /** What of the book, or a record of its shell. */
  readonly part:
    | 'manifest'
    | 'file'
    | 'fingerprint'
    | 'photo'
    | 'picture'
    | 'page'
    | 'document'
    | 'record'
    | 'seal'
    | 'signature';
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

/** A book counted again. */
export interface CountedBook {
  readonly differences: readonly BookDifference[];
  /** Digests of what stands in the file now; absent where its pages cannot be read. */
  readonly found?: FoundPages;
}

export interface FoundPages {
  readonly pages: readonly (PageDigest | undefined)[];
  readonly document: string;
  /** Of its words: `es`. Absent where the file names none. */
  readonly language?: string;
}

/**
 * Everything of a book that differs from what it was when it was printed, by the digests that it carries: manifest, record files,
 * photos, fingerprint, each page and its pictures, links and notes, bookmarks and names; whatever no book has in it; and where all of
 * these are whole, any other byte, and the signature.
 */
export function verifyItself(book: CarriedBook, seal: SealCheck): CountedBook {
  if ('fault' in book.manifest) {
    const message = `The book is damaged: ${book.manifest.fault}.`;
    return { differences: [{ part: 'manifest', name: 'manifest', message }] };
  }
  const { manifest } = book.manifest;
  const pages = pageDifferences(book, manifest);
  const found = [
    ...manifestDifferences(book),
    ...fileDifferences(book, manifest),
    ...pages.differences,
    ...signatureDifferences(seal),
  ];
  const counted = pages.found ? { found: pages.found } : {};
  if (found.length > 0 || seal.sealed) return { differences: found, ...counted };
  const message =
    'The file is not the one that was printed: its records, photos and pages are as printed, but other bytes of it are not. ' +
    'It was damaged, or another program saved it again.';
  return { differences: [{ part: 'seal', name: 'file', message }], ...counted };
}

function signatureDifferences({ signature }: SealCheck): readonly BookDifference[] {
  if (!signature || !('fault' in signature)) return [];
  return [{ part: 'signature', name: 'signature', message: `The signature ${signature.fault}.` }];
}

function manifestDifferences(book: CarriedBook): readonly BookDifference[] {
  if (identifierOf(book.file)[0] === book.manifestDigest) return [];
  return [
    {
      part: 'manifest',
      name: 'manifest',
      message: 'The manifest is not the one that the book was printed with: it does not fit the identifier of the file.',
    },
  ];
}

function fileDifferences(book: CarriedBook, manifest: Manifest): readonly BookDifference[] {
  const records = carriedRecords(book, manifest);
  const damaged = records.flatMap(({ path, fault }): readonly BookDifference[] =>
    fault ? [{ part: 'file', name: path, message: `Record file ${path} ${fault}.` }] : [],
  );
  const photos = manifest.photos.flatMap((photo): readonly BookDifference[] => {
    const fault = photo.carried ? carriedPhoto(book, photo).fault : undefined;
    return fault ? [{ part: 'photo', name: photo.path, message: `Photo ${photo.id ?? ''} (${photo.path}) ${fault}.` }] : [];
  });
  const others = foreignFiles(book, manifest);
  // Before each edition had a fingerprint of its own, what it withholds counted too: only a whole record can then be counted again.
  const isCountable = manifest.seal === 2 || manifest.edition === 'shop';
  if (damaged.length > 0 || !isCountable) return [...damaged, ...photos, ...others];
  const shell = loadStore(storeOfBook('book', records, manifest)).shells.get(manifest.shell);
  if (shell && fingerprint(shell.model, photoHashesOf(manifest)) === manifest.fingerprint) return [...photos, ...others];
  const message = 'The fingerprint is not that of the records in the book.';
  return [{ part: 'fingerprint', name: manifest.fingerprint, message }, ...photos, ...others];
}

/** Attached files that the manifest does not name. */
function foreignFiles(book: CarriedBook, { records, photos }: Manifest): readonly BookDifference[] {
  const named = new Set([
    MANIFEST,
    ...records.map(({ path }) => path),
    ...photos.flatMap((one) => (one.carried ? [one.path] : [])),
  ]);
  return book.attached
    .filter((name) => !named.has(name))
    .map((name) => ({ part: 'file', name, message: `An attached file is not part of the book: ${name}.` }));
}

/** @throws PdfFault where the file asks for more work than a book does */
function pageDifferences({ file }: CarriedBook, manifest: Manifest): CountedBook {
  let objects: readonly PageObject[];
  let pages: readonly (PageDigest | undefined)[];
  let document: string;
  try {
    objects = pageObjects(file);
    pages = pageDigests(file, manifest.seal !== 2);
    document = documentDigest(file, objects);
  } catch (error) {
    if (!(error instanceof PdfFault) || file.budget.left === 0) throw error;
    return { differences: [{ part: 'page', name: 'all', message: `The pages cannot be read: ${error.message}.` }] };
  }
  const found: BookDifference[] = foreignParts(file, objects).map((what) => ({
    part: 'document',
    name: what,
    message: `The file has ${what}: no book has that.`,
  }));
  if (manifest.document_sha256 !== undefined && manifest.document_sha256 !== document) {
    const message = 'The bookmarks, named places, page labels or title of the file are not as printed.';
    found.push({ part: 'document', name: 'document', message });
  }
  if (pages.length !== manifest.pages.length) {
    const message = `The book has ${pages.length} pages, expected ${manifest.pages.length}.`;
    found.push({ part: 'page', name: 'all', message });
  }
  manifest.pages.forEach((expected, i) => {
    const page = pages[i];
    if (i < pages.length && page?.whole !== expected.sha256) found.push(pageDifference(i + 1, page, expected, manifest.pictures));
  });
  const language = file.text(file.catalog, 'Lang');
  return { differences: found, found: { pages, document, ...(language === undefined ? {} : { language }) } };
}

export function pageDifference(
  number: number,
  page: PageDigest | undefined,
  expected: Manifest['pages'][number],
  photos: Manifest['pictures'],
): BookDifference {
  const name = String(number);
  const says = (message: string): BookDifference => ({ part: 'page', name, message: `Page ${number}: ${message}.` });
  if (!page) return says('it is damaged and cannot be read');
  if (page.text !== expected.text_sha256) return says('its words or lines are not as printed');
  const changed = expected.pictures.find((picture) => !page.pictures.includes(picture));
  if (changed === undefined) return says('its fonts, colours, size, links or notes are not as printed');
  const photo = photos[changed];
  return { ...says(`its picture${photo ? ` of photo ${photo}` : ''} is not as printed`), part: 'picture' };
}
