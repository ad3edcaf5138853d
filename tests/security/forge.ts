/**
 * A forger with this program's source, a general PDF library and all the time in the world, but without the shop's key: changes a book and
 * makes every digest anew that the program publishes.
 */
import { createHash } from 'node:crypto';
import { inflateSync } from 'node:zlib';
import {
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFObject,
  PDFRawStream,
  type PDFRef,
  PDFString,
} from '@cantoo/pdf-lib';
import { fingerprint, sha256 } from '../../src/archive/fingerprint.js';
import { MANIFEST, type Manifest } from '../../src/archive/manifest.js';
import { storeOfBook } from '../../src/archive/verify.js';
import { loadStore } from '../../src/model/load.js';
import { documentDigest } from '../../src/pdf/document-digest.js';
import { pageDigests, pageObjects } from '../../src/pdf/pages.js';
import { PdfFile } from '../../src/pdf/read.js';
import { sealAt } from '../../src/pdf/seal.js';
import { type Signer, signDetached } from '../../src/signing/cms.js';

type Json = { -readonly [K in keyof Manifest]: Manifest[K] };

/** A book taken apart. */
export interface Taken {
  readonly pdf: PDFDocument;
  readonly manifest: Json;
  /** Bytes of the carried files, by path. */
  readonly files: Map<string, Buffer>;
  readonly page: (number: number) => PDFDict;
  readonly catalog: PDFDict;
}

export const key = (text: string): PDFName => PDFName.of(text);

/** What becomes of the shop's signature: it is taken out, left as it is, or one of the forger's own is put in its place. */
export type Afterwards = 'strip' | 'leave' | Signer;

export async function forge(book: Uint8Array, change: (taken: Taken) => void, afterwards: Afterwards = 'strip'): Promise<Buffer> {
  const pdf = await PDFDocument.load(book, { updateMetadata: false });
  const streams = embedded(pdf);
  const files = new Map([...streams].map(([path, ref]) => [path, contentsOf(pdf, ref)]));
  const manifest = JSON.parse((files.get(MANIFEST) as Buffer).toString('utf8')) as Json;
  const taken = { pdf, manifest, files, catalog: pdf.catalog, page: (number: number) => pdf.getPage(number - 1).node };
  if (afterwards !== 'leave') strip(pdf);
  change(taken);
  if (typeof afterwards === 'object') openField(pdf);
  await renewed(taken, streams);
  return close(pdf, manifest, afterwards);
}

/** Every digest of the manifest, counted again over what the book has become. */
async function renewed({ pdf, manifest, files }: Taken, streams: ReadonlyMap<string, PDFRef>): Promise<void> {
  for (const [path, ref] of streams) if (path !== MANIFEST && files.has(path)) put(pdf, ref, files.get(path) as Buffer);
  const saved = PdfFile.open(await pdf.save({ useObjectStreams: false, updateFieldAppearances: false }));
  const pages = pageDigests(saved, manifest.seal !== 2);
  manifest.pages = pages.map((page, i) => ({
    label: manifest.pages[i]?.label ?? String(i + 1),
    sha256: page?.whole ?? '',
    text_sha256: page?.text ?? '',
    pictures: [...(page?.pictures ?? [])],
  }));
  if (manifest.seal === 2) manifest.document_sha256 = documentDigest(saved, pageObjects(saved));
  manifest.records = manifest.records
    .filter(({ path }) => files.has(path))
    .map(({ path }) => ({ path, bytes: (files.get(path) as Buffer).length, sha256: sha256(files.get(path) as Buffer) }));
  manifest.photos = manifest.photos.map((photo) => {
    const bytes = files.get(photo.path);
    return bytes && photo.carried ? { ...photo, bytes: bytes.length, sha256: sha256(bytes) } : photo;
  });
  const carried = manifest.records.map(({ path }) => ({ path, bytes: files.get(path) as Buffer }));
  const shell = loadStore(storeOfBook('forged', carried, manifest)).shells.get(manifest.shell);
  if (shell) manifest.fingerprint = fingerprint(shell.model, new Map(manifest.photos.map((one) => [one.path, one.sha256])));
  put(pdf, streams.get(MANIFEST) as PDFRef, Buffer.from(`${JSON.stringify(manifest, null, 1)}\n`));
}

/** The file, with identifier, seal and signature anew. */
async function close(pdf: PDFDocument, manifest: Json, afterwards: Afterwards): Promise<Buffer> {
  const id = sha256(Buffer.from(`${JSON.stringify(manifest, null, 1)}\n`));
  const seal = '0'.repeat(64);
  pdf.context.trailerInfo.ID = pdf.context.obj([PDFHexString.of(id), PDFHexString.of(seal)]);
  const bytes = Buffer.from(await pdf.save({ useObjectStreams: false, updateFieldAppearances: false }));
  const gap = typeof afterwards === 'object' ? openedGap(bytes) : undefined;
  const at = bytes.lastIndexOf(`<${seal}>`, undefined, 'latin1') + 1;
  bytes.write(sealAt(bytes, at, gap), at, 'latin1');
  if (gap && typeof afterwards === 'object') {
    const covered = createHash('sha256')
      .update(bytes.subarray(0, gap.from - 1))
      .update(bytes.subarray(gap.to + 1))
      .digest();
    bytes.write(Buffer.from(signDetached(covered, afterwards)).toString('hex'), gap.from, 'latin1');
  }
  return bytes;
}

function embedded(pdf: PDFDocument): Map<string, PDFRef> {
  const files = pdf.catalog.lookup(key('AF'), PDFArray).asArray();
  return new Map(
    files.map((one) => {
      const specification = pdf.context.lookup(one, PDFDict);
      const name = specification.lookup(key('UF'), PDFHexString).decodeText();
      return [name, specification.lookup(key('EF'), PDFDict).get(key('F')) as PDFRef] as const;
    }),
  );
}

const contentsOf = (pdf: PDFDocument, ref: PDFRef): Buffer => {
  const stream = pdf.context.lookup(ref) as PDFRawStream;
  const packed = stream.dict.has(key('Filter'));
  return Buffer.from(packed ? inflate(stream.contents) : stream.contents);
};

function put(pdf: PDFDocument, ref: PDFRef, bytes: Buffer): void {
  const old = pdf.context.lookup(ref) as PDFRawStream;
  const dict = old.dict.clone(pdf.context);
  dict.delete(key('Filter'));
  dict.set(key('Length'), PDFNumber.of(bytes.length));
  pdf.context.assign(ref, PDFRawStream.of(dict, bytes));
}

/** Takes the shop's signature out, with its field and the rule that nothing may change. */
function strip(pdf: PDFDocument): void {
  const form = pdf.catalog.lookup(key('AcroForm'));
  const field = form instanceof PDFDict ? form.lookup(key('Fields'), PDFArray).get(0) : undefined;
  for (const page of pdf.getPages()) {
    const notes = page.node.lookup(key('Annots'));
    if (notes instanceof PDFArray) {
      const at = notes.asArray().indexOf(field as PDFObject);
      if (at >= 0) notes.remove(at);
      if (notes.size() === 0) page.node.delete(key('Annots'));
    }
  }
  pdf.catalog.delete(key('AcroForm'));
  pdf.catalog.delete(key('Perms'));
}

const ROOM = 2 * 8192;
const RANGE = [0, 1111111111, 2222222222, 3333333333];

/** A field for a signature of the forger's own, as the program writes one. */
function openField(pdf: PDFDocument): void {
  const { context } = pdf;
  const first = pdf.getPage(0);
  const value = context.register(
    context.obj({
      Type: 'Sig',
      Filter: 'Adobe.PPKLite',
      SubFilter: 'adbe.pkcs7.detached',
      M: PDFString.of('D:20260630100000Z'),
      ByteRange: RANGE,
      Contents: PDFHexString.of('0'.repeat(ROOM)),
    }),
  );
  const field = context.register(
    context.obj({
      Type: 'Annot',
      Subtype: 'Widget',
      FT: 'Sig',
      T: PDFString.of('x'),
      F: 132,
      Rect: [0, 0, 0, 0],
      P: first.ref,
      V: value,
    }),
  );
  const notes = first.node.lookup(key('Annots'));
  first.node.set(key('Annots'), context.obj([...(notes instanceof PDFArray ? notes.asArray() : []), field]));
  pdf.catalog.set(key('AcroForm'), context.obj({ Fields: [field], SigFlags: 3 }));
}

function openedGap(bytes: Buffer): { from: number; to: number } {
  const from = bytes.indexOf(`<${'0'.repeat(ROOM)}>`, 0, 'latin1') + 1;
  const gap = { from, to: from + ROOM };
  const range = RANGE.map(String).join(' ');
  const real = `0 ${gap.from - 1} ${gap.to + 1} ${bytes.length - gap.to - 1}`;
  bytes.write(real.padEnd(range.length), bytes.indexOf(range, 0, 'latin1'), 'latin1');
  return gap;
}

const inflate = (bytes: Uint8Array): Uint8Array => inflateSync(bytes);
