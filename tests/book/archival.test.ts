/**
 * What an archive asks of the file, read by the object library and by pdf.js. Clause numbers: ISO 19005-3 (PDF/A-3) where not said
 * otherwise. A validator judges more than is asked here.
 */
import {
  PDFArray,
  PDFBool,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFObject,
  PDFRawStream,
  PDFString,
} from '@cantoo/pdf-lib';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Carry } from '../../src/archive/carry.js';
import { sha256 } from '../../src/archive/fingerprint.js';
import { openPrinter, type PrintedBook, type Printer } from '../../src/book/index.js';
import { openChromium } from '../../src/book/print/chromium.js';
import { sheetsOf } from '../../src/book/print/document.js';
import { printDocument } from '../../src/book/print/print.js';
import { readAttachments } from './read-pdf.js';
import { FINGERPRINT, HISTORY, smallAssessment } from './small-store.js';

let printer: Printer;
let book: PrintedBook;
let pdf: PDFDocument;
let dicts: readonly PDFDict[];
let streams: readonly PDFRawStream[];

const SHOP = Buffer.from('shop: {name: Harrowquill Test Works}\n');
const PHOTO = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#446688' } })
  .jpeg()
  .toBuffer();

const carry: Carry = {
  head: {
    program: { program: 'shellbook', build: '0', platform: 'any' },
    shell: 'T-1',
    title: 'Travelling test bench',
    edition: 'shop',
    shop: 'Harrowquill “Test” & Works',
    revision: HISTORY.revision,
    revision_date: HISTORY.revisionDate,
    tag: HISTORY.tag,
    uncommitted: [],
    fingerprint: FINGERPRINT,
    records: [{ path: 'shop.yaml', bytes: SHOP.length, sha256: sha256(SHOP) }],
    withheld: [],
    photos: [{ path: 'shells/T-1/photos/p(1).jpg', id: 'P-1', bytes: PHOTO.length, sha256: sha256(PHOTO), carried: true }],
  },
  records: new Map([['shop.yaml', SHOP]]),
  photo: async () => PHOTO,
};

const print = (): Promise<PrintedBook> =>
  printer.print({
    assessment: smallAssessment(),
    edition: 'shop',
    fingerprint: FINGERPRINT,
    history: HISTORY,
    photoFile: async (id) => (id === 'P-1' ? PHOTO : undefined),
    carry: async () => carry,
  });

beforeAll(async () => {
  printer = openPrinter();
  book = await print();
  pdf = await PDFDocument.load(book.pdf, { updateMetadata: false });
  const objects = pdf.context.enumerateIndirectObjects().map(([, object]) => object);
  streams = objects.filter((one): one is PDFRawStream => one instanceof PDFRawStream);
  dicts = [...objects.filter((one): one is PDFDict => one instanceof PDFDict), ...streams.map((one) => one.dict)];
});
afterAll(() => printer?.close());

const key = (text: string): PDFName => PDFName.of(text);
const nameIn = (dict: PDFDict, of: string): string => {
  const value = dict.lookup(key(of));
  return value instanceof PDFName ? value.decodeText() : '';
};
const ofType = (type: string): readonly PDFDict[] => dicts.filter((one) => nameIn(one, 'Type') === type);
const textOf = (value: PDFObject | undefined): string =>
  value instanceof PDFString || value instanceof PDFHexString ? value.decodeText() : '';
/** Keys of a dictionary and of those within it; with the value where that is a name. */
const entriesOf = (dict: PDFDict): readonly string[] =>
  dict
    .entries()
    .flatMap(([name, value]) => [
      name.decodeText(),
      `${name.decodeText()} ${value instanceof PDFName ? value.decodeText() : value instanceof PDFBool ? value.asBoolean() : ''}`,
      ...(value instanceof PDFDict ? entriesOf(value) : []),
    ]);
const listIn = (dict: PDFDict, of: string): readonly PDFObject[] => dict.lookup(key(of), PDFArray).asArray();

async function xmp(): Promise<{ readonly raw: string; get(name: string): unknown }> {
  const metadata = pdf.catalog.lookup(key('Metadata'));
  if (!(metadata instanceof PDFRawStream)) throw new Error('no metadata');
  const task = getDocument({ data: Uint8Array.from(book.pdf), isEvalSupported: false, verbosity: 0 });
  const read = await (await task.promise).getMetadata();
  const parsed = read.metadata as unknown as { get(name: string): unknown };
  await task.destroy();
  return { raw: Buffer.from(metadata.contents).toString('utf8'), get: (name) => parsed.get(name) };
}

describe('the file', () => {
  it('says what it is in its metadata, and nothing else in its title', async () => {
    const { raw, get } = await xmp();
    expect(raw).toMatch(/<pdfaid:part>3<\/pdfaid:part>\s+<pdfaid:conformance>A[\s\S]*<pdfuaid:part>1</u);
    expect(get('dc:title')).toBe(pdf.getTitle());
    expect(get('dc:creator')).toEqual(['Harrowquill “Test” & Works']);
    expect(pdf.getAuthor()).toBe('Harrowquill “Test” & Works');
    expect([get('xmp:creatortool'), get('pdf:producer')]).toEqual([pdf.getCreator(), pdf.getProducer()]);
    // 6.6.3: the dates of both agree. 09:30 at +02:00 is 07:30 UTC.
    expect(get('xmp:createdate')).toBe('2026-07-02T07:30:00Z');
    expect([pdf.getCreationDate(), pdf.getModificationDate()].map((one) => one?.toISOString())).toEqual([
      '2026-07-02T07:30:00.000Z',
      '2026-07-02T07:30:00.000Z',
    ]);
    // 6.6.2.1: the packet is neither packed nor encrypted.
    expect((pdf.catalog.lookup(key('Metadata')) as PDFRawStream).dict.has(key('Filter'))).toBe(false);
  });

  it('has a version, a mark of binary bytes and two identifiers (6.1.2, 6.1.3)', () => {
    expect(Buffer.from(book.pdf).subarray(0, 9).toString()).toBe('%PDF-1.7\n');
    expect(book.pdf[9]).toBe('%'.charCodeAt(0));
    expect(book.pdf.subarray(10, 14).every((byte) => byte > 127)).toBe(true);
    expect(Buffer.from(book.pdf.subarray(-6)).toString()).toBe('%%EOF\n');
    expect(pdf.context.trailerInfo.ID).toBeInstanceOf(PDFArray);
  });

  it('shows its title, is tagged, and speaks English', () => {
    const preferences = pdf.catalog.lookup(key('ViewerPreferences'), PDFDict);
    expect(preferences.lookup(key('DisplayDocTitle'))?.toString()).toBe('true');
    expect(pdf.catalog.lookup(key('MarkInfo'), PDFDict).lookup(key('Marked'))?.toString()).toBe('true');
    expect(textOf(pdf.catalog.lookup(key('Lang')))).toBe('en');
  });

  it('labels its pages as they are numbered on paper', async () => {
    const task = getDocument({ data: Uint8Array.from(book.pdf), isEvalSupported: false, verbosity: 0 });
    const labels = await (await task.promise).getPageLabels();
    await task.destroy();
    expect(labels?.slice(0, 3)).toEqual(['Cover', '2', '3']);
    expect(labels).toHaveLength(book.pageCount);
  });

  it('means its colours by a profile that it carries (6.2.3)', async () => {
    const [intent] = listIn(pdf.catalog, 'OutputIntents');
    const dict = pdf.context.lookup(intent, PDFDict);
    expect(nameIn(dict, 'S')).toBe('GTS_PDFA1');
    const profile = dict.lookup(key('DestOutputProfile'));
    if (!(profile instanceof PDFRawStream)) throw new Error('no profile');
    expect(profile.dict.lookup(key('N'), PDFNumber).asNumber()).toBe(3);
    const bytes = Buffer.from((await import('node:zlib')).inflateSync(profile.contents));
    // ICC.1, 7.2: its size first, class and space at 12 and 16, its mark at 36.
    expect([bytes.readUInt32BE(0), bytes.toString('latin1', 12, 20), bytes.toString('latin1', 36, 40)]).toEqual([
      bytes.length,
      'mntrRGB ',
      'acsp',
    ]);
  });

  it('has no colours of ink, no script, nothing that leads out of it (6.2.4.3, 6.6.1)', () => {
    const forbidden =
      /^(?:JavaScript|JS|URI|OpenAction|AA|Encrypt|TR|TR2|HTP|OPI|Alternates|Ref|PS)$|^S Launch$|^S GoToR$|DeviceCMYK$|^Interpolate true$/u;
    const entries = dicts.flatMap(entriesOf);
    expect(entries.length).toBeGreaterThan(1000);
    expect(entries.filter((entry) => forbidden.test(entry))).toEqual([]);
    expect(streams.filter((one) => one.dict.has(key('F')) || /LZW|Crypt/u.test(nameIn(one.dict, 'Filter')))).toEqual([]);
  });

  it('carries every typeface that it uses, with Unicode values (6.2.11.4, 6.2.11.7)', () => {
    const fonts = ofType('Font').filter((one) => nameIn(one, 'Subtype') === 'Type0');
    expect(fonts.length).toBeGreaterThan(3);
    for (const font of fonts) {
      expect(font.lookup(key('ToUnicode'))).toBeInstanceOf(PDFRawStream);
      const [descendant] = listIn(font, 'DescendantFonts');
      const descriptor = pdf.context.lookup(descendant, PDFDict).lookup(key('FontDescriptor'), PDFDict);
      expect(descriptor.lookup(key('FontFile2')) ?? descriptor.lookup(key('FontFile3'))).toBeInstanceOf(PDFRawStream);
    }
    expect(
      ofType('Font')
        .map((one) => nameIn(one, 'Subtype'))
        .filter((one) => !/^(?:Type0|CIDFontType[02])$/u.test(one)),
    ).toEqual([]);
  });

  it('has links that print and are never hidden (6.3.2)', () => {
    const links = ofType('Annot');
    expect(links.length).toBeGreaterThan(100);
    expect(new Set(links.map((one) => `${nameIn(one, 'Subtype')} ${one.lookup(key('F'))}`))).toEqual(new Set(['Link 4']));
  });

  it('names each file that it carries, its kind, its date and what it is to the book (6.8; ISO 32000-2, 7.11.3 and 14.13)', async () => {
    const files = listIn(pdf.catalog, 'AF').map((one) => pdf.context.lookup(one, PDFDict));
    const told = files.map((file) => {
      const embedded = file.lookup(key('EF'), PDFDict).lookup(key('UF'));
      if (!(embedded instanceof PDFRawStream)) throw new Error('no file');
      const parameters = embedded.dict.lookup(key('Params'), PDFDict);
      expect(parameters.lookup(key('ModDate'))?.toString()).toBe('(D:20260702073000Z)');
      return [
        textOf(file.lookup(key('UF'))),
        textOf(file.lookup(key('F'))),
        nameIn(file, 'AFRelationship'),
        nameIn(embedded.dict, 'Subtype'),
      ];
    });
    expect(told).toEqual([
      ['shellbook-manifest.json', 'shellbook-manifest.json', 'Data', 'application/json'],
      ['shells/T-1/photos/p(1).jpg', 'shells/T-1/photos/p_1_.jpg', 'Source', 'image/jpeg'],
      ['shop.yaml', 'shop.yaml', 'Source', 'application/yaml'],
    ]);
    const read = await readAttachments(book.pdf);
    expect(Buffer.from(read.get('shop.yaml') as Uint8Array)).toEqual(SHOP);
    expect(Buffer.from(read.get('shells/T-1/photos/p(1).jpg') as Uint8Array)).toEqual(PHOTO);
  });

  it('does not claim to be an archive’s where a sign has no glyph, and says on which page', async () => {
    const browser = await openChromium();
    try {
      // A private-use character (Unicode 16, 23.5): no typeface has it.
      const odd = await printDocument(browser, {
        html: '<!doctype html><html lang="en"><title>x</title><style>p{width:50mm}</style><body><section class="chapter" data-chapter="a"><p>\uE9C3</p></section></body></html>',
        sheets: sheetsOf('a4'),
        chapters: [{ key: 'a', title: 'A' }],
        pictures: new Map(),
        runningLeft: '',
        runningFoot: '',
        date: '2026-01-02',
        warnings: [],
      });
      expect(odd.warnings).toEqual([expect.stringMatching(/^Page 1 has a sign that no typeface here has/u)]);
      const metadata = (await PDFDocument.load(odd.pdf, { updateMetadata: false })).catalog.lookup(key('Metadata'));
      expect(Buffer.from((metadata as PDFRawStream).contents).toString()).not.toContain('pdfaid:part');
    } finally {
      await browser.close();
    }
  });
});
