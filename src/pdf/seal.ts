import { createHash } from 'node:crypto';
import { PDFArray, PDFHexString, PDFString } from '@cantoo/pdf-lib';
import { name } from './parse.js';
import type { PdfFile } from './read.js';

/** Digits of a SHA-256. */
export const SEAL_DIGITS = 64;
const OPEN = '0'.repeat(SEAL_DIGITS);

/**
 * The seal: SHA-256 over the whole file, with zeros where the seal itself stands. It stands as the changing half of the file's
 * identifier (ISO 32000-2, 14.4), which any program that saves the file again replaces.
 */
export function sealAt(bytes: Uint8Array, at: number): string {
  const hash = createHash('sha256');
  hash
    .update(bytes.subarray(0, at))
    .update(OPEN)
    .update(bytes.subarray(at + SEAL_DIGITS));
  return hash.digest('hex');
}

/** The two halves of the identifier, as lower-case hex; empty where there is none. */
export function identifierOf(file: PdfFile): readonly string[] {
  const list = file.resolve(file.xref.trailer.get(name('ID')));
  if (!(list instanceof PDFArray)) return [];
  return list
    .asArray()
    .map((one) => (one instanceof PDFHexString || one instanceof PDFString ? Buffer.from(one.asBytes()).toString('hex') : ''));
}

/** True where not one byte of the file has changed since it was written. */
export function isSealed(file: PdfFile): boolean {
  const seal = identifierOf(file)[1] ?? '';
  if (seal.length !== SEAL_DIGITS) return false;
  const whole = Buffer.from(file.bytes.buffer, file.bytes.byteOffset, file.bytes.byteLength);
  const at = whole.lastIndexOf(seal, undefined, 'latin1');
  return at >= 0 && sealAt(whole, at) === seal;
}
