import { createHash } from 'node:crypto';
import {
  PDFArray,
  PDFBool,
  PDFDict,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFObject,
  PDFRawStream,
  PDFRef,
  PDFString,
} from '@cantoo/pdf-lib';
import { PdfFault } from './fault.js';
import { streamBytes } from './inflate.js';
import type { PdfFile } from './read.js';

/** How a thing is stored, and its way back to what holds it: neither is part of what it shows. */
const NOT_SHOWN = new Set([
  'Length',
  'Filter',
  'DecodeParms',
  'Parent',
  'Annots',
  'StructParents',
  'StructParent',
  'Tabs',
  'Metadata',
]);
const MOST_STREAM_BYTES = 256e6;
const DEEPEST = 60;

/**
 * Digests of PDF objects by what they show: the same however the file packs, numbers or orders them, so that a file saved again by
 * another program still has them. A stream counts unpacked, but a picture as its file.
 */
export class Digester {
  private readonly known = new Map<number, string>();

  constructor(private readonly file: PdfFile) {}

  /** SHA-256, hex. */
  of(value: PDFObject | undefined, depth = 0): string {
    if (depth > DEEPEST) throw new PdfFault('its objects are nested too deep');
    if (!(value instanceof PDFRef)) return sha(this.form(value, depth));
    const known = this.known.get(value.objectNumber);
    if (known) return known;
    // A way round comes back to here.
    this.known.set(value.objectNumber, 'round');
    const digest = sha(this.form(this.file.resolve(value), depth));
    this.known.set(value.objectNumber, digest);
    return digest;
  }

  private form(value: PDFObject | undefined, depth: number): string {
    if (value instanceof PDFRawStream) {
      return `s${this.dictForm(value.dict, depth)}${sha(streamBytes(value, MOST_STREAM_BYTES))}`;
    }
    if (value instanceof PDFDict) return this.dictForm(value, depth);
    if (value instanceof PDFArray) return `[${value.asArray().map((one) => this.of(one, depth + 1))}]`;
    if (value instanceof PDFRef) return this.of(value, depth + 1);
    if (value instanceof PDFName) return `/${value.decodeText()}`;
    if (value instanceof PDFNumber) return `${value.asNumber()}`;
    if (value instanceof PDFBool) return `${value.asBoolean()}`;
    if (value instanceof PDFString || value instanceof PDFHexString) return `(${Buffer.from(value.asBytes()).toString('hex')})`;
    return 'null';
  }

  private dictForm(dict: PDFDict, depth: number): string {
    const entries = dict
      .entries()
      .map(([key, value]) => [key.decodeText(), value] as const)
      .filter(([key]) => !NOT_SHOWN.has(key))
      .sort(([a], [b]) => (a < b ? -1 : 1));
    return `<${entries.map(([key, value]) => `/${key} ${this.of(value, depth + 1)}`)}>`;
  }
}

const sha = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex');
