import { PDFContext, type PDFDict, PDFName, PDFNumber, type PDFObject, PDFObjectParser, PDFRawStream } from '@cantoo/pdf-lib';
import { PdfFault } from './fault.js';

/** Only for the library's sake: objects are looked up by {@link ./read.ts}, none is registered here. */
const context = PDFContext.create();

export const name = (text: string): PDFName => PDFName.of(text);

/**
 * The object that begins at `offset`; for an object of its own (`12 0 obj`), `offset` is where its value begins.
 * @throws PdfFault where there is none that can be read
 */
export function parseObject(bytes: Uint8Array, offset = 0, end = bytes.length): PDFObject {
  try {
    return PDFObjectParser.forBytes(bytes.subarray(offset, end), context).parseObject();
  } catch {
    throw new PdfFault(`an object at byte ${offset} cannot be read`);
  }
}

const HEAD = /^\s*(\d{1,10})\s+(\d{1,5})\s+obj/u;
const LONGEST_HEAD = 40;

/** Number of the object whose `12 0 obj` stands at `offset`, and where its value begins. Undefined where none stands there. */
export function objectHead(bytes: Uint8Array, offset: number): { readonly number: number; readonly value: number } | undefined {
  const head = Buffer.from(bytes.subarray(offset, offset + LONGEST_HEAD)).toString('latin1');
  const found = HEAD.exec(head);
  return found ? { number: Number(found[1]), value: offset + found[0].length } : undefined;
}

/** A whole number of a dictionary, at least 0; undefined where there is none. */
export function count(dict: PDFDict, key: string): number | undefined {
  const value = dict.get(name(key));
  if (!(value instanceof PDFNumber)) return undefined;
  const found = value.asNumber();
  return Number.isSafeInteger(found) && found >= 0 ? found : undefined;
}

export function asStream(object: PDFObject | undefined, what: string): PDFRawStream {
  if (object instanceof PDFRawStream) return object;
  throw new PdfFault(`${what} cannot be read`);
}
