import { PDFDict, type PDFObject } from '@cantoo/pdf-lib';
import { Budget } from '../pdf/budget.js';
import { PdfFault } from '../pdf/fault.js';
import { PdfFile } from '../pdf/read.js';
import { sha256 } from './fingerprint.js';
import { MANIFEST, type Manifest, type ManifestRead, readManifest } from './manifest.js';

/** A book as a file, with what it carries. */
export interface CarriedBook {
  readonly file: PdfFile;
  readonly manifest: ManifestRead;
  /** SHA-256 of the manifest's bytes, hex. */
  readonly manifestDigest: string;
  /** Names of the attached files. */
  readonly attached: readonly string[];
  /** Bytes of a carried file, at most `mostBytes`. @throws PdfFault where it is missing, damaged or larger */
  carried(path: string, mostBytes: number): Uint8Array;
}

const MOST_MANIFEST_BYTES = 64e6;
const MOST_NAMES = 50_000;

/** @throws PdfFault where it is no PDF that can be read, or none that carries a record */
export function openBook(bytes: Uint8Array, budget = Budget.for(bytes.length)): CarriedBook {
  const file = PdfFile.open(bytes, budget);
  const specifications = embeddedFiles(file);
  const carried = (path: string, mostBytes: number): Uint8Array => {
    const specification = specifications.get(path);
    if (!specification) throw new PdfFault('it is not in the book');
    const streams = file.dict(specification, 'EF', 'the embedded file');
    const bytes = file.unpack(file.get(streams, 'UF') ?? file.get(streams, 'F'), mostBytes, 'the embedded file');
    if (path === MANIFEST || path.endsWith('.yaml')) file.budget.spend('textByte', bytes.length);
    return bytes;
  };
  const attached = [...specifications.keys()];
  if (!specifications.has(MANIFEST)) {
    throw new PdfFault('it carries no record: it is not a shellbook book, or its attachments were removed');
  }
  try {
    const manifest = carried(MANIFEST, MOST_MANIFEST_BYTES);
    const text = Buffer.from(manifest).toString('utf8');
    return { file, manifest: readManifest(text), manifestDigest: sha256(manifest), attached, carried };
  } catch (error) {
    if (!(error instanceof PdfFault) || file.budget.left === 0) throw error;
    return { file, manifest: { fault: `its manifest cannot be read: ${error.message}` }, manifestDigest: '', attached, carried };
  }
}

/** File specifications by the name in them: the tree of embedded files (ISO 32000-2, 7.7.4 and 7.9.6). */
function embeddedFiles(file: PdfFile): ReadonlyMap<string, PDFDict> {
  const found = new Map<string, PDFDict>();
  const names = file.get(file.catalog, 'Names');
  const tree = names instanceof PDFDict ? file.get(names, 'EmbeddedFiles') : undefined;
  const seen = new Set<PDFObject>();
  const walk = (node: PDFObject | undefined, depth: number): void => {
    file.budget.spend('node');
    if (!(node instanceof PDFDict) || depth > 20 || seen.has(node)) return;
    seen.add(node);
    for (const kid of file.list(node, 'Kids')) walk(file.resolve(kid), depth + 1);
    const pairs = file.list(node, 'Names');
    for (let i = 1; i < pairs.length && found.size < MOST_NAMES; i += 2) {
      file.budget.spend('node');
      const specification = file.resolve(pairs[i]);
      if (!(specification instanceof PDFDict)) continue;
      const name = file.text(specification, 'UF') ?? file.text(specification, 'F');
      if (name !== undefined && !found.has(name)) found.set(name, specification);
    }
  };
  walk(tree, 0);
  return found;
}

/** A file that the book carries, with the bytes or what is wrong with it. */
export interface CarriedFile {
  readonly path: string;
  readonly bytes?: Uint8Array;
  /** End of a sentence that begins with the file's name. */
  readonly fault?: string;
}

/** Record files beyond this are not unpacked: nobody typed them. */
const MOST_RECORD_BYTES = 512e6;

/** The record files, each checked against its digest in the manifest. */
export function carriedRecords(book: CarriedBook, { records }: Manifest): readonly CarriedFile[] {
  let left = MOST_RECORD_BYTES;
  return records.map(({ path, bytes, sha256: digest }) => {
    const file = checked(book, path, Math.min(bytes, left), digest);
    left -= file.bytes?.length ?? 0;
    return file;
  });
}

/** A photo beyond this is not unpacked, whatever the manifest says of its size: no camera writes such files. */
const MOST_PHOTO_BYTES = 256e6;

/** One photo's file, checked likewise: one at a time, because all of them may not fit into memory beside the book. */
export const carriedPhoto = (book: CarriedBook, { path, bytes, sha256: digest }: Manifest['photos'][number]): CarriedFile =>
  checked(book, path, Math.min(bytes, MOST_PHOTO_BYTES), digest);

function checked(book: CarriedBook, path: string, size: number, digest: string): CarriedFile {
  try {
    const bytes = book.carried(path, size);
    return sha256(bytes) === digest ? { path, bytes } : { path, fault: 'is not as it was when the book was printed' };
  } catch (error) {
    if (error instanceof PdfFault && book.file.budget.left > 0) return { path, fault: `cannot be read: ${error.message}` };
    throw error;
  }
}
