import { createHash } from 'node:crypto';
import { PDFArray, PDFHexString, PDFString } from '@cantoo/pdf-lib';
import { name } from './parse.js';
import type { PdfFile } from './read.js';

/** Bytes of a file, the last one not among them. */
export interface ByteRange {
  readonly from: number;
  readonly to: number;
}

/** Digits of a SHA-256. */
export const SEAL_DIGITS = 64;

/**
 * The seal: SHA-256 over the whole file, with zeros where the seal itself stands, and where a signature does, which is made after it and
 * covers it. It stands as the changing half of the file's identifier (ISO 32000-2, 14.4), which any program that saves the file again
 * replaces.
 */
export function sealAt(bytes: Uint8Array, at: number, signature?: ByteRange): string {
  const hash = createHash('sha256');
  let here = 0;
  const zeros = (from: number, to: number): void => {
    hash.update(bytes.subarray(here, from)).update('0'.repeat(to - from));
    here = to;
  };
  const blank = [{ from: at, to: at + SEAL_DIGITS }, ...(signature ? [signature] : [])].sort((a, b) => a.from - b.from);
  for (const { from, to } of blank) zeros(from, to);
  return hash.update(bytes.subarray(here)).digest('hex');
}

/** The two halves of the identifier, as lower-case hex; empty where there is none. */
export function identifierOf(file: PdfFile): readonly string[] {
  const list = file.resolve(file.xref.trailer.get(name('ID')));
  if (!(list instanceof PDFArray)) return [];
  return list
    .asArray()
    .map((one) => (one instanceof PDFHexString || one instanceof PDFString ? Buffer.from(one.asBytes()).toString('hex') : ''));
}

/** True where not one byte of the file has changed since it was written. `signature`: where one stands, without its brackets. */
export function isSealed(file: PdfFile, signature?: ByteRange): boolean {
  const seal = identifierOf(file)[1] ?? '';
  if (seal.length !== SEAL_DIGITS) return false;
  const whole = Buffer.from(file.bytes.buffer, file.bytes.byteOffset, file.bytes.byteLength);
  const at = whole.lastIndexOf(seal, undefined, 'latin1');
  const apart = signature === undefined || at + SEAL_DIGITS <= signature.from || at >= signature.to;
  return at >= 0 && apart && sealAt(whole, at, signature) === seal;
}
