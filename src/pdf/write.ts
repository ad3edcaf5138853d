import { promisify } from 'node:util';
import { deflate } from 'node:zlib';
import { PdfFault } from './fault.js';
import { isSpace, objectHead } from './parse.js';
import type { RawObject } from './raw-object.js';
import type { PdfFile } from './read.js';
import { SEAL_DIGITS, sealAt } from './seal.js';
import { emptySignature, type FileSigner, openSignature, writeSignature } from './signature.js';

export interface Identity {
  /** Object number of the catalogue, and of the information dictionary. */
  readonly root: number;
  readonly info: number;
  /** The lasting half of the file's identifier, hex. */
  readonly id: string;
}

/**
 * Every object of a file that was written once, as bytes: none is read, which is what makes packing a hundred thousand of them a
 * matter of tenths of a second. Throws {@link PdfFault} for a file that was added to, or that packs objects already.
 */
export function rawObjects({ bytes, xref }: PdfFile): readonly RawObject[] {
  const whole = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const places = [...xref.objects].map(([number, { at }]) => ({ number, at })).sort((a, b) => (a.at ?? -1) - (b.at ?? -1));
  return places.map(({ number, at }, i) => {
    const head = at === undefined ? undefined : objectHead(bytes, at);
    if (head?.number !== number) throw new PdfFault('its objects are not laid out as the printing browser does');
    const end = whole.lastIndexOf(END, (places[i + 1]?.at ?? xref.start) - END.length);
    if (end < head.value) throw new PdfFault('an object has no end');
    const body = bytes.subarray(head.value, end);
    return { number, body, isStream: endsWith(body, STREAM_END) };
  });
}

const END = Buffer.from('endobj');
const STREAM_END = Buffer.from('endstream');

function endsWith(bytes: Uint8Array, word: Buffer): boolean {
  let end = bytes.length;
  while (isSpace(bytes[end - 1])) end--;
  return word.equals(bytes.subarray(end - word.length, end));
}

/** Objects of one stream: more pack better, fewer are quicker to get at. */
const PACK = 500;
const packed = promisify<Uint8Array, { level: number }, Buffer>(deflate);

/** Objects that are being packed, by threads of their own. */
export interface Packing {
  readonly objects: readonly RawObject[];
  readonly packs: readonly { readonly objects: readonly RawObject[]; readonly stream: Promise<Buffer> }[];
}

/** Begins to pack objects for {@link writePdf}, so that other work can go on meanwhile. */
export function packing(objects: readonly RawObject[]): Packing {
  const rest = objects.filter(({ isStream }) => !isStream);
  const packs = Array.from({ length: Math.ceil(rest.length / PACK) }, (_, i) => rest.slice(i * PACK, (i + 1) * PACK));
  return { objects, packs: packs.map((some) => ({ objects: some, stream: objectStream(some) })) };
}

/** A signature that is to stand in a file as an object of this number. */
export interface ToSign {
  readonly number: number;
  readonly signer: FileSigner;
}

/**
 * Writes a whole file (ISO 32000-2, 7.5): streams as they are, everything else packed into streams of objects, the table of objects
 * as a stream, sealed, and signed where somebody signs. The same objects and key give the same bytes.
 */
export async function writePdf(parts: readonly Packing[], identity: Identity, toSign?: ToSign): Promise<Buffer> {
  const out = new Output();
  out.add(Buffer.from('%PDF-1.7\n%\xd3\xeb\xe9\xe1\n', 'latin1'));
  let last = toSign?.number ?? 0;
  for (const { number, body, more = [], isStream } of parts.flatMap(({ objects }) => objects)) {
    last = Math.max(last, number);
    if (isStream) out.object(number, body, ...more);
  }
  for (const { objects, stream } of parts.flatMap(({ packs }) => packs)) {
    last++;
    out.object(last, await stream);
    for (const [index, one] of objects.entries()) out.places.set(one.number, [2, last, index]);
  }
  if (toSign) out.object(toSign.number, emptySignature(toSign.signer));
  return out.close(last + 1, identity, toSign);
}

async function objectStream(objects: readonly RawObject[]): Promise<Buffer> {
  const heads: string[] = [];
  const bodies: Uint8Array[] = [];
  let at = 0;
  for (const { number, body } of objects) {
    heads.push(`${number} ${at}`);
    bodies.push(body, Buffer.from('\n'));
    at += body.length + 1;
  }
  const head = `${heads.join(' ')}\n`;
  const bytes = await packed(Buffer.concat([Buffer.from(head), ...bodies]), { level: 8 });
  return stream(`/Type /ObjStm /N ${objects.length} /First ${head.length} /Filter /FlateDecode`, bytes);
}

/** The bytes of a stream object. */
export function stream(entries: string, bytes: Uint8Array): Buffer {
  return Buffer.concat([
    Buffer.from(`<<${entries} /Length ${bytes.length}>>\nstream\n`, 'latin1'),
    bytes,
    Buffer.from('\nendstream', 'latin1'),
  ]);
}

type Place = readonly [kind: 0 | 1 | 2, first: number, second: number];

class Output {
  private readonly parts: Uint8Array[] = [];
  private size = 0;
  readonly places = new Map<number, Place>([[0, [0, 0, 65535]]]);

  add(bytes: Uint8Array): void {
    this.parts.push(bytes);
    this.size += bytes.length;
  }

  object(number: number, ...body: readonly Uint8Array[]): void {
    this.places.set(number, [1, this.size, 0]);
    this.add(Buffer.from(`${number} 0 obj\n`));
    for (const part of body) this.add(part);
    this.add(Buffer.from('\nendobj\n'));
  }

  async close(number: number, { root, info, id }: Identity, toSign?: ToSign): Promise<Buffer> {
    const start = this.size;
    this.places.set(number, [1, start, 0]);
    const size = number + 1;
    const table = await packed(upward(this.table(size)), { level: 6 });
    const seal = '0'.repeat(SEAL_DIGITS);
    const entries = [
      `/Type /XRef /Size ${size} /W [1 5 2] /Root ${root} 0 R /Info ${info} 0 R /ID [<${id}> <${seal}>]`,
      `/Filter /FlateDecode /DecodeParms <</Predictor 12 /Columns ${ROW}>>`,
    ].join(' ');
    this.add(Buffer.from(`${number} 0 obj\n`));
    this.add(stream(entries, table));
    this.add(Buffer.from(`\nendobj\nstartxref\n${start}\n%%EOF\n`));
    const whole = Buffer.concat(this.parts, this.size);
    const at = whole.indexOf(`<${seal}>`, start, 'latin1') + 1;
    const signed = toSign && openSignature(whole, (this.places.get(toSign.number) as Place)[1]);
    whole.write(sealAt(whole, at, signed), at, 'latin1');
    if (toSign && signed) writeSignature(whole, signed, toSign.signer);
    return whole;
  }

  private table(size: number): Buffer {
    const rows = Buffer.alloc(size * ROW);
    let above = 0;
    for (let number = 0; number < size; number++) {
      // A number that nobody has may count any use of it before: one like the row above packs into next to nothing.
      const [kind, first, second] = this.places.get(number) ?? [0, 0, above];
      rows.writeUInt8(kind, number * ROW);
      rows.writeUIntBE(first, number * ROW + 1, 5);
      rows.writeUInt16BE(second, number * ROW + 6);
      above = second;
    }
    return rows;
  }
}

/** Bytes of a row of the table: kind, place (5 bytes: files beyond 4 GB too), index. */
const ROW = 8;

/** The PNG filter `up` (ISO/IEC 15948, 9.2): each row as what it differs by from the one above. */
function upward(rows: Buffer): Buffer {
  const count = rows.length / ROW;
  const out = Buffer.alloc(count * (ROW + 1));
  for (let row = 0; row < count; row++) {
    out[row * (ROW + 1)] = 2;
    for (let i = 0; i < ROW; i++) {
      const above = row === 0 ? 0 : (rows[(row - 1) * ROW + i] as number);
      out[row * (ROW + 1) + 1 + i] = (rows[row * ROW + i] as number) - above;
    }
  }
  return out;
}
