import { createHash } from 'node:crypto';
import { PDFArray, PDFDict, PDFHexString, PDFNumber, PDFString } from '@cantoo/pdf-lib';
import { name, objectHead } from './parse.js';
import type { PdfFile } from './read.js';
import type { ByteRange } from './seal.js';
import { signatureField } from './signature-field.js';

/** Room for a signature, in bytes of DER: several times what one takes with a key of 4,096 bits. */
const ROOM = 8192;

/** How a detached CMS signature in a PDF is called (ISO 32000-2, 12.8.3.3): the name that readers have known longest. */
const SUB_FILTER = 'adbe.pkcs7.detached';
/** Ten digits each: a file may have 2 GB. */
const RANGE = '[0 0000000000 0000000000 0000000000]';

/** Who signs a file, with what: takes the SHA-256 of what is signed, gives DER. */
export interface FileSigner {
  readonly name: string;
  /** `D:20260630100000Z` */
  readonly date: string;
  sign(digest: Uint8Array): Uint8Array;
}

/** The dictionary of a signature that is still to be made (ISO 32000-2, 12.8.1): after it nothing in the file may be changed. */
export function emptySignature({ name: who, date }: FileSigner): Buffer {
  const entries = [
    `/Type /Sig /Filter /Adobe.PPKLite /SubFilter /${SUB_FILTER}`,
    `/Name ${PDFHexString.fromText(who)} /M (${date})`,
    // 12.8.2.2, access permissions 1: any change makes it invalid.
    '/Reference [<</Type /SigRef /TransformMethod /DocMDP /TransformParams <</Type /TransformParams /P 1 /V /1.2>>>>]',
    `/ByteRange ${RANGE}`,
    `/Contents <${'0'.repeat(2 * ROOM)}>`,
  ];
  return Buffer.from(`<<${entries.join('\n')}>>`, 'latin1');
}

/** Where the digits of {@link emptySignature} stand in the whole file, of which it is the object that begins at `at`. Writes its range. */
export function openSignature(whole: Buffer, at: number): ByteRange {
  const from = whole.indexOf('/Contents <', at, 'latin1') + '/Contents <'.length;
  const to = from + 2 * ROOM;
  const digits = (value: number): string => String(value).padStart(10, '0');
  whole.write(
    `[0 ${digits(from - 1)} ${digits(to + 1)} ${digits(whole.length - to - 1)}]`,
    whole.indexOf(RANGE, at, 'latin1'),
    'latin1',
  );
  return { from, to };
}

/** SHA-256 of what a signature covers: the whole file without its digits and their brackets. */
const coveredDigest = (whole: Uint8Array, { from, to }: ByteRange): Uint8Array =>
  createHash('sha256')
    .update(whole.subarray(0, from - 1))
    .update(whole.subarray(to + 1))
    .digest();

/** Makes the signature and writes it, the rest of its room zeros. */
export function writeSignature(whole: Buffer, stretch: ByteRange, signer: FileSigner): void {
  const der = Buffer.from(signer.sign(coveredDigest(whole, stretch)));
  if (der.length > ROOM) throw new RangeError('The signature is larger than its room');
  whole.write(der.toString('hex'), stretch.from, 'latin1');
}

/** A signature as it stands in a file. */
export interface FileSignature {
  readonly der: Uint8Array;
  /** SHA-256 of what it covers. */
  readonly digest: Uint8Array;
  readonly stretch: ByteRange;
  /** When the signer says that it was made, `D:…`; covered by the signature like everything else. */
  readonly date: string | undefined;
}

export type SignatureFound = { readonly signature: FileSignature } | { readonly fault: string } | { readonly none: true };

/**
 * The signature of a file. A fault is the end of a sentence about it: there is one, but not one that covers every byte of the file but
 * itself, in the one form in which it is written here.
 */
export function findSignature(file: PdfFile): SignatureFound {
  const field = signatureField(file);
  if (!field) return file.catalog.has(name('AcroForm')) ? { fault: 'has a form that no book has' } : { none: true };
  const at = file.xref.objects.get(field.value)?.at;
  const dict = file.resolve(field.field.get(name('V')));
  if (at === undefined || objectHead(file.bytes, at) === undefined || !(dict instanceof PDFDict))
    return { fault: 'cannot be read' };
  const stretch = stretchOf(file, dict, at);
  if (!stretch) return { fault: 'does not cover the whole file' };
  const digits = Buffer.from(file.bytes.subarray(stretch.from, stretch.to)).toString('latin1');
  if (!/^[0-9a-f]+$/u.test(digits)) return { fault: 'cannot be read' };
  const der = withoutRoom(Buffer.from(digits, 'hex'));
  if (!der) return { fault: 'cannot be read' };
  const date = file.get(dict, 'M');
  const digest = coveredDigest(file.bytes, stretch);
  return { signature: { der, digest, stretch, date: date instanceof PDFString ? date.decodeText() : undefined } };
}

/** The gap of its range, where that is the room of this very signature and everything else is covered. */
function stretchOf(file: PdfFile, dict: PDFDict, at: number): ByteRange | undefined {
  const range = file.get(dict, 'ByteRange');
  if (!(range instanceof PDFArray) || range.size() !== 4) return undefined;
  const [first, before, after, rest] = range.asArray().map((one) => (one instanceof PDFNumber ? one.asNumber() : -1));
  if (first !== 0 || before === undefined || after === undefined || rest === undefined) return undefined;
  const { bytes } = file;
  const fits = before > at && after - before === 2 * ROOM + 2 && after + rest === bytes.length;
  if (!fits || bytes[before] !== 0x3c || bytes[after - 1] !== 0x3e) return undefined;
  const contents = dict.get(name('Contents'));
  const stretch = { from: before + 1, to: after - 1 };
  const standing = Buffer.from(bytes.subarray(stretch.from, stretch.to)).toString('latin1');
  return contents instanceof PDFHexString && contents.asString() === standing ? stretch : undefined;
}

/** DER is as long as it says; zeros fill the room behind it. */
function withoutRoom(bytes: Buffer): Buffer | undefined {
  if (bytes[0] !== 0x30 || bytes[1] !== 0x82) return undefined;
  const end = 4 + bytes.readUInt16BE(2);
  return end <= bytes.length && bytes.subarray(end).every((byte) => byte === 0) ? bytes.subarray(0, end) : undefined;
}
