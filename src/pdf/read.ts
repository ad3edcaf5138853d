import { PDFArray, PDFDict, PDFHexString, PDFName, type PDFObject, PDFRawStream, PDFRef, PDFString } from '@cantoo/pdf-lib';
import { Budget } from './budget.js';
import { PdfFault } from './fault.js';
import { streamBytes } from './inflate.js';
import { asStream, countIn, name, objectHead, parseObject } from './parse.js';
import type { RawObject } from './raw-object.js';
import { readXref, type Xref } from './xref.js';

const MOST_OBJECT_BYTES = 64e6;
/** A reference leads to a value, not to a chain of references. */
const LONGEST_CHAIN = 8;

/**
 * A PDF of which only what is asked for is read: the objects of a book are many, and what it carries is a few of them. What is read
 * is untrusted: each step is bounded, and whatever is wrong is a {@link PdfFault}.
 */
export class PdfFile {
  private readonly read = new Map<number, PDFObject>();
  private readonly packs = new Map<number, readonly PDFObject[]>();

  private constructor(
    readonly bytes: Uint8Array,
    readonly xref: Xref,
    /** What may still be done with this file: whoever walks through it counts here. */
    readonly budget: Budget,
  ) {}

  /** @throws PdfFault where it is no PDF, encrypted, or its table of objects is damaged */
  static open(bytes: Uint8Array, budget = Budget.for(bytes.length)): PdfFile {
    if (Buffer.from(bytes.subarray(0, 5)).toString('latin1') !== '%PDF-') throw new PdfFault('it is not a PDF');
    const xref = readXref(bytes, budget);
    if (xref.trailer.has(name('Encrypt'))) throw new PdfFault('it is encrypted');
    return new PdfFile(bytes, xref, budget);
  }

  /** This file with some of its objects written anew; its bytes hold both, so that it is for reading only. */
  replacing(objects: readonly RawObject[]): PdfFile {
    const places = new Map(this.xref.objects);
    const parts: Uint8Array[] = [this.bytes];
    let at = this.bytes.length;
    for (const { number, body, more = [] } of objects) {
      places.set(number, { at });
      for (const part of [Buffer.from(`${number} 0 obj\n`), body, ...more, Buffer.from('\nendobj\n')]) {
        parts.push(part);
        at += part.length;
      }
    }
    return new PdfFile(Buffer.concat(parts, at), { ...this.xref, objects: places }, Budget.for(at));
  }

  get catalog(): PDFDict {
    return this.dict(this.xref.trailer, 'Root', 'its catalogue');
  }

  /** Follows references to the value. Undefined where there is none, as for a value that is absent. */
  resolve(value: PDFObject | undefined): PDFObject | undefined {
    let here = value;
    for (let step = 0; here instanceof PDFRef; step++) {
      if (step >= LONGEST_CHAIN) throw new PdfFault('its references run in a circle');
      here = this.object(here.objectNumber);
    }
    return here;
  }

  get(dict: PDFDict, key: string): PDFObject | undefined {
    return this.resolve(dict.get(name(key)));
  }

  dict(dict: PDFDict, key: string, what: string): PDFDict {
    const value = this.get(dict, key);
    if (value instanceof PDFDict) return value;
    throw new PdfFault(`${what} is missing or damaged`);
  }

  list(dict: PDFDict, key: string): readonly PDFObject[] {
    const value = this.get(dict, key);
    return value instanceof PDFArray ? value.asArray() : [];
  }

  /** A text string or a byte string as text; undefined where there is none. */
  text(dict: PDFDict, key: string): string | undefined {
    const value = this.get(dict, key);
    return value instanceof PDFString || value instanceof PDFHexString ? value.decodeText() : undefined;
  }

  nameOf(dict: PDFDict, key: string): string | undefined {
    const value = this.get(dict, key);
    return value instanceof PDFName ? value.decodeText() : undefined;
  }

  /** What a stream holds; see {@link streamBytes}. */
  unpack(value: PDFObject | undefined, mostBytes: number, what: string): Uint8Array {
    return streamBytes(asStream(this.resolve(value), what), mostBytes, this.budget);
  }

  private object(number: number): PDFObject | undefined {
    this.budget.spend('node');
    const known = this.read.get(number);
    if (known) return known;
    const standing = this.xref.objects.get(number);
    if (!standing) return undefined;
    const found = standing.at === undefined ? this.pack(standing.inStream)[standing.index] : this.objectAt(standing.at, number);
    // Streams are large and asked for once.
    if (found && !(found instanceof PDFRawStream)) this.read.set(number, found);
    return found;
  }

  private objectAt(at: number, number: number): PDFObject {
    const head = at < this.bytes.length ? objectHead(this.bytes, at) : undefined;
    if (head?.number !== number) throw new PdfFault(`object ${number} is not where its table says`);
    return parseObject(this.bytes, this.budget, head.value);
  }

  /** The objects of a stream of objects (ISO 32000-2, 7.5.7), in its order. */
  private pack(number: number): readonly PDFObject[] {
    const known = this.packs.get(number);
    if (known) return known;
    const standing = this.xref.objects.get(number);
    if (standing?.at === undefined) throw new PdfFault('a stream of objects is missing');
    const stream = asStream(this.objectAt(standing.at, number), 'a stream of objects');
    const bytes = streamBytes(stream, MOST_OBJECT_BYTES, this.budget);
    const first = Math.min(countIn(stream.dict, 'First') ?? bytes.length, bytes.length);
    this.budget.spend('parsedByte', first);
    const head = Buffer.from(bytes.subarray(0, first)).toString('latin1').trim().split(/\s+/u).map(Number);
    const objects: PDFObject[] = [];
    for (let i = 0; i + 1 < head.length; i += 2) {
      objects.push(parseObject(bytes, this.budget, first + (head[i + 1] as number)));
    }
    this.packs.set(number, objects);
    return objects;
  }
}
