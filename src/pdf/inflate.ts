import { inflateSync } from 'node:zlib';
import { PDFArray, PDFDict, PDFName, type PDFRawStream } from '@cantoo/pdf-lib';
import type { Budget } from './budget.js';
import { PdfFault } from './fault.js';
import { countIn, name } from './parse.js';

/**
 * What a stream holds, unpacked to at most `mostBytes`. Filters of pictures are left as they are: their bytes are the picture.
 * @throws PdfFault where it is damaged, unpacks to more, or is packed in a way that is not read here
 */
export function streamBytes(stream: PDFRawStream, mostBytes: number, budget: Budget): Uint8Array {
  const filters = filtersOf(stream);
  budget.spend('byte', stream.contents.length);
  if (filters.length === 0 || PICTURES.has(filters.at(-1) as string)) return stream.contents;
  if (filters.length > 1 || filters[0] !== 'FlateDecode') throw new PdfFault(`a stream is packed by ${filters.join(' and ')}`);
  const most = Math.min(mostBytes, budget.leftOf('byte') + 1);
  const unpacked = inflate(stream.contents, most, () => budget.spend('byte', most));
  budget.spend('byte', unpacked.length);
  const parameters = stream.dict.get(name('DecodeParms'));
  return parameters instanceof PDFDict ? unpredict(unpacked, parameters) : unpacked;
}

const PICTURES = new Set(['DCTDecode', 'JPXDecode', 'CCITTFaxDecode', 'JBIG2Decode']);

function filtersOf(stream: PDFRawStream): readonly string[] {
  const filter = stream.dict.get(name('Filter'));
  const all = filter instanceof PDFArray ? filter.asArray() : filter === undefined ? [] : [filter];
  return all.map((one) => (one instanceof PDFName ? one.decodeText() : '?'));
}

/** `tooLarge` is told before the fault is thrown: the work was done all the same. */
function inflate(bytes: Uint8Array, mostBytes: number, tooLarge: () => void): Uint8Array {
  try {
    return inflateSync(bytes, { maxOutputLength: Math.max(1, mostBytes) });
  } catch (error) {
    const isTooLarge = (error as NodeJS.ErrnoException).code === 'ERR_BUFFER_TOO_LARGE';
    if (isTooLarge) tooLarge();
    throw new PdfFault(isTooLarge ? `a stream unpacks to more than ${Math.ceil(mostBytes / 1e6)} MB` : 'a stream is damaged');
  }
}

/** Takes back the PNG filters (ISO/IEC 15948, 9) that rows of numbers are packed with: none, left and up are in use for them. */
function unpredict(bytes: Uint8Array, parameters: PDFDict): Uint8Array {
  const predictor = countIn(parameters, 'Predictor') ?? 1;
  if (predictor === 1) return bytes;
  const wide = countIn(parameters, 'Columns') ?? 1;
  const plain = (countIn(parameters, 'Colors') ?? 1) === 1 && (countIn(parameters, 'BitsPerComponent') ?? 8) === 8;
  if (predictor < 10 || !plain || wide < 1 || bytes.length % (wide + 1) !== 0) throw new PdfFault('a stream is packed oddly');
  const rows = bytes.length / (wide + 1);
  const plainBytes = new Uint8Array(rows * wide);
  for (let row = 0; row < rows; row++) {
    const filter = bytes[row * (wide + 1)] as number;
    if (filter > 2) throw new PdfFault('a stream is packed oddly');
    for (let at = 0; at < wide; at++) {
      const here = row * wide + at;
      const before = filter === 1 && at > 0 ? plainBytes[here - 1] : filter === 2 && row > 0 ? plainBytes[here - wide] : 0;
      plainBytes[here] = (bytes[row * (wide + 1) + 1 + at] as number) + (before as number);
    }
  }
  return plainBytes;
}
