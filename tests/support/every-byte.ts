/** Every byte of a PDF as anybody can get at it: the file, each stream unpacked, each string, and the words that its pages show. */
import {
  decodePDFRawStream,
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  type PDFObject,
  PDFRawStream,
  PDFString,
} from '@cantoo/pdf-lib';
import { readPdf } from '../book/read-pdf.js';

export interface EveryByte {
  readonly bytes: readonly Uint8Array[];
  readonly text: string;
}

export async function everyByte(pdf: Uint8Array): Promise<EveryByte> {
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  const bytes: Uint8Array[] = [pdf];
  const texts: string[] = [];
  const look = (value: PDFObject | undefined): void => {
    if (value instanceof PDFRawStream) {
      look(value.dict);
      bytes.push(unpacked(value));
    } else if (value instanceof PDFDict) {
      for (const [key, one] of value.entries()) {
        texts.push(key.decodeText());
        look(one);
      }
    } else if (value instanceof PDFArray) for (const one of value.asArray()) look(one);
    else if (value instanceof PDFString || value instanceof PDFHexString) {
      bytes.push(value.asBytes());
      texts.push(value.decodeText());
    } else if (value instanceof PDFName) texts.push(value.decodeText());
  };
  for (const [, object] of document.context.enumerateIndirectObjects()) look(object);
  const read = await readPdf(pdf);
  texts.push(...read.pages.map((page) => page.text.replace(/\s+/gu, ' ')), JSON.stringify(read.outline), read.title);
  return { bytes, text: texts.join('\n') };
}

function unpacked(stream: PDFRawStream): Uint8Array {
  try {
    return decodePDFRawStream(stream).decode();
  } catch {
    // A picture is its own file.
    return stream.contents;
  }
}

/** In which encoding a word stands there; empty where it does not, in any case of letters. */
export function standsIn({ bytes, text }: EveryByte, word: string): readonly string[] {
  const found = new Set<string>();
  if (text.toLowerCase().includes(word.toLowerCase())) found.add('text');
  for (const one of bytes) {
    const buffer = Buffer.from(one.buffer, one.byteOffset, one.byteLength);
    for (const form of [word, word.toLowerCase(), word.toUpperCase()])
      for (const [name, needle] of encodings(form)) if (buffer.includes(needle)) found.add(name);
  }
  return [...found];
}

function encodings(word: string): readonly (readonly [string, Buffer])[] {
  const little = Buffer.from(word, 'utf16le');
  const hex = (bytes: Buffer): readonly Buffer[] => [
    Buffer.from(bytes.toString('hex')),
    Buffer.from(bytes.toString('hex').toUpperCase()),
  ];
  const big = Buffer.from(little).swap16();
  return [
    ['UTF-8', Buffer.from(word, 'utf8')],
    ['UTF-16BE', big],
    ['UTF-16LE', little],
    ...[Buffer.from(word, 'utf8'), big].flatMap((one) => hex(one).map((needle) => ['hexadecimal', needle] as const)),
  ];
}
