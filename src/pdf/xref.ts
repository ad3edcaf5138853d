import { PDFArray, PDFDict, PDFNumber } from '@cantoo/pdf-lib';
import type { Budget } from './budget.js';
import { PdfFault } from './fault.js';
import { streamBytes } from './inflate.js';
import { asStream, countIn, name, objectHead, parseObject } from './parse.js';

/** Where an object stands: at a byte of the file, or as one of several within a stream of objects. */
export type ObjectPlace =
  | { readonly at: number; readonly inStream?: undefined }
  | { readonly inStream: number; readonly index: number; readonly at?: undefined };

export interface Xref {
  /** Object number → where it stands. What was freed is absent. */
  readonly objects: ReadonlyMap<number, ObjectPlace>;
  readonly trailer: PDFDict;
  /** Byte of the newest table. */
  readonly start: number;
}

/** A file was never saved over more often than this. */
const MOST_PARTS = 1000;
const MOST_TABLE_BYTES = 400e6;

/**
 * The table of objects of a whole file (ISO 32000-2, 7.5.4 and 7.5.8): the newest part first, then each that it was added to.
 * @throws PdfFault where there is none that can be read
 */
export function readXref(bytes: Uint8Array, budget: Budget): Xref {
  const found: Found = { objects: new Map(), freed: new Set() };
  const start = startOf(bytes);
  let trailer: PDFDict | undefined;
  const waiting = [start];
  const seen = new Set<number>();
  while (waiting.length > 0) {
    const at = waiting.shift() as number;
    if (seen.has(at)) continue;
    if (seen.size >= MOST_PARTS) throw new PdfFault('its table of objects has too many parts');
    seen.add(at);
    const part = readPart(bytes, at, found, budget);
    trailer ??= part;
    for (const key of ['XRefStm', 'Prev']) {
      const next = countIn(part, key);
      if (next !== undefined) waiting.push(next);
    }
  }
  return { objects: found.objects, trailer: trailer as PDFDict, start };
}

/** Objects found so far: a newer part has been read before an older one, and rules. */
interface Found {
  readonly objects: Map<number, ObjectPlace>;
  readonly freed: Set<number>;
}

function put(found: Found, number: number, standing: ObjectPlace | undefined): void {
  if (found.objects.has(number) || found.freed.has(number)) return;
  if (standing) found.objects.set(number, standing);
  else found.freed.add(number);
}

function startOf(bytes: Uint8Array): number {
  const end = Buffer.from(bytes.subarray(Math.max(0, bytes.length - 2048))).toString('latin1');
  const told = /startxref\s+(\d{1,12})\s+%%EOF\s*$/u.exec(end);
  if (!told) throw new PdfFault('its end is missing or damaged');
  return Number(told[1]);
}

function readPart(bytes: Uint8Array, at: number, found: Found, budget: Budget): PDFDict {
  if (at >= bytes.length) throw new PdfFault('its table of objects is not where it should be');
  const isTable = Buffer.from(bytes.subarray(at, at + 4)).toString('latin1') === 'xref';
  return isTable ? readTable(bytes, at, found, budget) : readTableStream(bytes, at, found, budget);
}

const ENTRY = 20;

/** An offset of the table. Read by its digits: there are a hundred thousand of them. */
function tenDigits(bytes: Uint8Array, at: number): number {
  let value = 0;
  for (let i = 0; i < 10; i++) {
    const digit = (bytes[at + i] as number) - 0x30;
    if (digit < 0 || digit > 9) throw new PdfFault('its table of objects is damaged');
    value = value * 10 + digit;
  }
  return value;
}

function readTable(bytes: Uint8Array, at: number, found: Found, budget: Budget): PDFDict {
  const whole = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let here = at + 4;
  for (;;) {
    const head = /^\s*(?:(trailer)|(\d{1,10}) (\d{1,10})[ \r]*\n)/u.exec(whole.toString('latin1', here, here + 60));
    if (!head) throw new PdfFault('its table of objects is damaged');
    here += head[0].length;
    if (head[1]) break;
    const [first, many] = [Number(head[2]), Number(head[3])];
    if (here + many * ENTRY > bytes.length) throw new PdfFault('its table of objects is cut short');
    budget.spend('row', many + 1);
    for (let i = 0; i < many; i++, here += ENTRY) {
      const inUse = whole[here + 17] === 0x6e;
      put(found, first + i, inUse ? { at: tenDigits(whole, here) } : undefined);
    }
  }
  const trailer = parseObject(bytes, budget, here);
  if (!(trailer instanceof PDFDict)) throw new PdfFault('its trailer cannot be read');
  return trailer;
}

function readTableStream(bytes: Uint8Array, at: number, found: Found, budget: Budget): PDFDict {
  const head = objectHead(bytes, at);
  if (!head) throw new PdfFault('its table of objects is damaged');
  const stream = asStream(parseObject(bytes, budget, head.value), 'its table of objects');
  const widths = numbersOf(stream.dict, 'W') ?? [];
  const [kindWide = 0, firstWide = 0, secondWide = 0] = widths;
  const wide = kindWide + firstWide + secondWide;
  if (widths.length !== 3 || wide < 1 || wide > 24) throw new PdfFault('its table of objects is damaged');
  const rows = Buffer.from(streamBytes(stream, MOST_TABLE_BYTES, budget));
  const spans = numbersOf(stream.dict, 'Index') ?? [0, countIn(stream.dict, 'Size') ?? 0];
  const field = (from: number, width: number): number => {
    let value = 0;
    for (let i = 0; i < width; i++) value = value * 256 + (rows[from + i] as number);
    return value;
  };
  let row = 0;
  for (let span = 0; span + 1 < spans.length; span += 2) {
    const many = spans[span + 1] as number;
    budget.spend('row', Math.min(many, Math.floor((rows.length - row) / wide)) + 1);
    for (let i = 0; i < many && row + wide <= rows.length; i++, row += wide) {
      const kind = kindWide === 0 ? 1 : field(row, kindWide);
      const first = field(row + kindWide, firstWide);
      const second = field(row + kindWide + firstWide, secondWide);
      const standing = kind === 1 ? { at: first } : kind === 2 ? { inStream: first, index: second } : undefined;
      put(found, (spans[span] as number) + i, standing);
    }
  }
  return stream.dict;
}

function numbersOf(dict: PDFDict, key: string): readonly number[] | undefined {
  const list = dict.get(name(key));
  if (!(list instanceof PDFArray)) return undefined;
  return list.asArray().map((one) => (one instanceof PDFNumber ? one.asNumber() : 0));
}
