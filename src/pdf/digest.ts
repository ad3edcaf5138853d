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

const MOST_STREAM_BYTES = 256e6;
const DEEPEST = 60;

/** What counts of an object, and what is known of it before it is read. */
export interface CountedObject {
  /** Keys that do not count, in whatever dictionary they stand. */
  readonly without: ReadonlySet<string>;
  /** Every value within an object has a digest of its own, which is slow and was so before. */
  readonly eachAlone?: boolean;
  /** Objects that stand for a word, as a page for its number: what leads there does not count what it leads to. */
  readonly words?: ReadonlyMap<number, string>;
  /** Objects that are no part of the file yet. */
  readonly added?: ReadonlyMap<number, PDFObject>;
}

/** How a thing is stored, and its way back to what holds it: neither is part of what it shows. */
const HOW_STORED = ['Length', 'Filter', 'DecodeParms', 'Parent', 'StructParents', 'StructParent'];

/** What is drawn on a page alone: the rule of books printed before annotations counted. */
export const DRAWN: CountedObject = { without: new Set([...HOW_STORED, 'Annots', 'Tabs', 'Metadata']), eachAlone: true };
export const EVERYTHING: CountedObject = { without: new Set(HOW_STORED) };

/**
 * Digests of PDF objects by what they show: the same however the file packs, numbers or orders them, so that a file saved again by
 * another program still has them. A stream counts unpacked, but a picture as its file; each once.
 */
export class Digester {
  private readonly known = new Map<number, string>();

  constructor(
    private readonly file: PdfFile,
    private readonly counted: CountedObject,
  ) {}

  /** SHA-256, hex. */
  of(value: PDFObject | undefined, depth = 0): string {
    if (!(value instanceof PDFRef)) return sha(this.form(value, depth));
    this.enter(depth);
    const known = this.counted.words?.get(value.objectNumber) ?? this.known.get(value.objectNumber);
    if (known) return known;
    // A way round comes back to here.
    this.known.set(value.objectNumber, 'round');
    const digest = sha(this.form(this.counted.added?.get(value.objectNumber) ?? this.file.resolve(value), depth));
    this.known.set(value.objectNumber, digest);
    return digest;
  }

  /** Of a dictionary as if it had these entries. */
  ofEntries(entries: Iterable<readonly [string, PDFObject]>): string {
    return sha(this.entriesForm([...entries], 0));
  }

  private enter(depth: number): void {
    if (depth > DEEPEST) throw new PdfFault('its objects are nested too deep');
    this.file.budget.spend('node');
  }

  /** What stands for a value within another: of an object of its own its digest. */
  private within(value: PDFObject | undefined, depth: number): string {
    return value instanceof PDFRef || this.counted.eachAlone ? this.of(value, depth) : this.form(value, depth);
  }

  private form(value: PDFObject | undefined, depth: number): string {
    this.enter(depth);
    if (value instanceof PDFRawStream) {
      return `s${this.dictForm(value.dict, depth)}${sha(streamBytes(value, MOST_STREAM_BYTES, this.file.budget))}`;
    }
    if (value instanceof PDFDict) return this.dictForm(value, depth);
    if (value instanceof PDFArray) return `[${value.asArray().map((one) => this.within(one, depth + 1))}]`;
    if (value instanceof PDFRef) return this.of(value, depth + 1);
    if (value instanceof PDFName) return this.nameForm(value.decodeText());
    if (value instanceof PDFNumber) return `${value.asNumber()}`;
    if (value instanceof PDFBool) return `${value.asBoolean()}`;
    if (value instanceof PDFString || value instanceof PDFHexString) return `(${Buffer.from(value.asBytes()).toString('hex')})`;
    return 'null';
  }

  /** In quotes: a name may have any signs, also those that part two of them here. */
  private nameForm(name: string): string {
    return this.counted.eachAlone ? `/${name}` : JSON.stringify(name);
  }

  private dictForm(dict: PDFDict, depth: number): string {
    return this.entriesForm(
      dict.entries().map(([key, value]) => [key.decodeText(), value] as const),
      depth,
    );
  }

  private entriesForm(entries: readonly (readonly [string, PDFObject])[], depth: number): string {
    const counted = entries.filter(([key]) => !this.counted.without.has(key)).sort(([a], [b]) => (a < b ? -1 : 1));
    return `<${counted.map(([key, value]) => `${this.nameForm(key)} ${this.within(value, depth + 1)}`)}>`;
  }
}

const sha = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex');
