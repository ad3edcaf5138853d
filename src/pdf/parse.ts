import { PDFContext, type PDFDict, PDFName, PDFNumber, type PDFObject, PDFObjectParser, PDFRawStream } from '@cantoo/pdf-lib';
import type { Budget } from './budget.js';
import { PdfFault } from './fault.js';

/** Only for the library's sake: objects are looked up by {@link ./read.ts}, none is registered here. */
const context = PDFContext.create();

export const name = (text: string): PDFName => PDFName.of(text);

/**
 * The object that begins at `offset`; for an object of its own (`12 0 obj`), `offset` is where its value begins.
 * @throws PdfFault where there is none that can be read
 */
export function parseObject(bytes: Uint8Array, budget: Budget, offset = 0, end = bytes.length): PDFObject {
  const most = Math.min(end, offset + budget.leftOf('parsedByte') + 1);
  const parser = PDFObjectParser.forBytes(bytes.subarray(offset, most), context);
  let read: PDFObject | undefined;
  try {
    read = parser.parseObject();
  } catch {
    // What is wrong with it is said below, once what was read has been counted.
  }
  const stream = read instanceof PDFRawStream ? read : undefined;
  // A stream that says how long it is was jumped over and copied, any other was searched for its end.
  const jumped = stream && countIn(stream.dict, 'Length') === stream.contents.length ? stream.contents.length : 0;
  budget.spend('byte', jumped);
  budget.spend('parsedByte', consumed(parser) - jumped);
  if (read) return read;
  throw new PdfFault(`an object at byte ${offset} cannot be read`);
}

/** Bytes that the library has gone over. */
const consumed = (parser: PDFObjectParser): number => (parser as unknown as { bytes: { offset(): number } }).bytes.offset();

/** Number of the object whose `12 0 obj` stands at `offset`, and where its value begins. Undefined where none stands there. */
export function objectHead(bytes: Uint8Array, offset: number): { readonly number: number; readonly value: number } | undefined {
  const number = wholeNumber(bytes, skipSpace(bytes, offset));
  const generation = number && wholeNumber(bytes, skipSpace(bytes, number.end));
  if (!number || !generation) return undefined;
  const word = skipSpace(bytes, generation.end);
  const isHead = bytes[word] === 0x6f && bytes[word + 1] === 0x62 && bytes[word + 2] === 0x6a;
  return isHead ? { number: number.value, value: skipSpace(bytes, word + 3) } : undefined;
}

/** White space of ISO 32000-2, 7.2.3. */
export const isSpace = (byte: number | undefined): boolean =>
  byte === 0x20 || byte === 0x0a || byte === 0x0d || byte === 0x09 || byte === 0x0c || byte === 0x00;

function skipSpace(bytes: Uint8Array, from: number): number {
  let at = from;
  while (isSpace(bytes[at])) at++;
  return at;
}

const LONGEST_NUMBER = 10;

function wholeNumber(bytes: Uint8Array, from: number): { readonly value: number; readonly end: number } | undefined {
  let value = 0;
  let end = from;
  for (; end - from <= LONGEST_NUMBER; end++) {
    const digit = (bytes[end] ?? 0) - 0x30;
    if (digit < 0 || digit > 9) break;
    value = value * 10 + digit;
  }
  return end > from && end - from <= LONGEST_NUMBER ? { value, end } : undefined;
}

/** A whole number of a dictionary, at least 0; undefined where there is none. */
export function countIn(dict: PDFDict, key: string): number | undefined {
  const value = dict.get(name(key));
  if (!(value instanceof PDFNumber)) return undefined;
  const found = value.asNumber();
  return Number.isSafeInteger(found) && found >= 0 ? found : undefined;
}

export function asStream(object: PDFObject | undefined, what: string): PDFRawStream {
  if (object instanceof PDFRawStream) return object;
  throw new PdfFault(`${what} cannot be read`);
}
