import { createHash } from 'node:crypto';
import { promisify } from 'node:util';
import { deflate } from 'node:zlib';
import {
  PDFContext,
  type PDFDict,
  PDFHexString,
  PDFName,
  type PDFObject,
  PDFRawStream,
  PDFRef,
  PDFString,
} from '@cantoo/pdf-lib';
import type { RawObject } from '../../pdf/raw-object.js';

/** A file that travels inside the book. */
export interface Attachment {
  /** With forward slashes, as in the store. */
  readonly path: string;
  readonly bytes: Uint8Array;
  readonly mediaType: string;
  readonly description: string;
  /** What it is to the book (ISO 32000-2, 7.11.3): what it was made from, or what belongs to its figures. */
  readonly relationship: 'Source' | 'Data';
  /** Packed already, as a picture is. */
  readonly packed?: boolean;
}

/** New objects of a file under numbers of their own, each as the library writes it. */
export class NewObjects {
  readonly context = PDFContext.create();
  readonly all: RawObject[] = [];
  /** What was added so far, by number. */
  readonly objects = new Map<number, PDFObject>();

  constructor(private next: number) {}

  /** A number for an object that is written elsewhere. */
  number(): number {
    return this.next++;
  }

  add(object: PDFDict, number = this.number()): PDFRef {
    this.objects.set(number, object);
    this.all.push(rawObject(number, object));
    return PDFRef.of(number);
  }

  async stream(entries: Record<string, unknown>, bytes: Uint8Array, packed = false): Promise<PDFRef> {
    const contents = packed ? bytes : await promisify<Uint8Array, { level: number }, Buffer>(deflate)(bytes, { level: 9 });
    const dict = this.dict({ ...entries, ...(packed ? {} : { Filter: 'FlateDecode' }), Length: contents.length });
    const number = this.number();
    this.objects.set(number, PDFRawStream.of(dict, contents));
    this.all.push({ number, body: bytesOf(dict), more: [STREAM, contents, END_STREAM], isStream: true });
    return PDFRef.of(number);
  }

  dict(entries: Record<string, unknown>): PDFDict {
    return this.context.obj(entries as Record<string, string>);
  }
}

const STREAM = Buffer.from('\nstream\n');
const END_STREAM = Buffer.from('\nendstream');

export const rawObject = (number: number, object: PDFDict): RawObject => ({ number, body: bytesOf(object), isStream: false });

function bytesOf(object: PDFObject): Uint8Array {
  const bytes = new Uint8Array(object.sizeInBytes());
  object.copyBytesInto(bytes, 0);
  return bytes;
}

/** Writes the files as embedded files. Gives their file specifications, in the order of their names. */
export async function embed(
  objects: NewObjects,
  files: readonly Attachment[],
  date: string,
): Promise<readonly { readonly name: PDFHexString; readonly file: PDFRef }[]> {
  const embedded = [];
  // The tree of names is sorted by the names' UTF-16 units, which is how they stand in it.
  for (const file of [...files].sort((a, b) => (a.path < b.path ? -1 : 1))) {
    const stream = await objects.stream(
      {
        Type: 'EmbeddedFile',
        Subtype: PDFName.of(file.mediaType),
        Params: {
          Size: file.bytes.length,
          ModDate: PDFString.of(date),
          CheckSum: PDFHexString.of(createHash('md5').update(file.bytes).digest('hex')),
        },
      },
      file.bytes,
      file.packed,
    );
    const specification = objects.dict({
      Type: 'Filespec',
      F: PDFString.of(file.path.replace(/[^ -~]|[()\\]/gu, '_')),
      UF: PDFHexString.fromText(file.path),
      Desc: PDFHexString.fromText(file.description),
      AFRelationship: file.relationship,
      EF: { F: stream, UF: stream },
    });
    embedded.push({ name: PDFHexString.fromText(file.path), file: objects.add(specification) });
  }
  return embedded;
}
