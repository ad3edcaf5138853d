import { PDFDict, PDFRef } from '@cantoo/pdf-lib';
import { name } from './parse.js';
import type { PdfFile } from './read.js';

/** The one field of a file that a signature stands in (ISO 32000-2, 12.7.5.5). */
export interface SignatureField {
  /** Object number of the field, which is its place on the page too. */
  readonly number: number;
  readonly field: PDFDict;
  /** Object number of the signature. */
  readonly value: number;
}

/** Undefined where the file has no form, or one that is anything but one signature's field: then what it has is no part of a book. */
export function signatureField(file: PdfFile): SignatureField | undefined {
  const form = file.get(file.catalog, 'AcroForm');
  if (!(form instanceof PDFDict) || !hasOnly(form, ['Fields', 'SigFlags'])) return undefined;
  const [only, ...more] = file.list(form, 'Fields');
  if (!(only instanceof PDFRef) || more.length > 0) return undefined;
  const field = file.resolve(only);
  if (!(field instanceof PDFDict) || !hasOnly(field, FIELD_KEYS)) return undefined;
  const value = field.get(name('V'));
  const isOurs =
    file.nameOf(field, 'FT') === 'Sig' &&
    file.nameOf(field, 'Subtype') === 'Widget' &&
    file.list(field, 'Rect').every((side) => side.toString() === '0');
  return isOurs && value instanceof PDFRef ? { number: only.objectNumber, field, value: value.objectNumber } : undefined;
}

/** Without an appearance and of no size: nothing can be shown by it. */
const FIELD_KEYS = ['Type', 'Subtype', 'FT', 'T', 'V', 'F', 'Rect', 'P', 'StructParent'];

const hasOnly = (dict: PDFDict, keys: readonly string[]): boolean => dict.keys().every((key) => keys.includes(key.decodeText()));
