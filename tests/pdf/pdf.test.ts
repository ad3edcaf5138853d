import { deflateSync } from 'node:zlib';
import { PDFDocument, PDFName } from '@cantoo/pdf-lib';
import { describe, expect, it } from 'vitest';
import { MANIFEST, readManifest } from '../../src/archive/manifest.js';
import { carriedRecords, openBook } from '../../src/archive/open-book.js';
import { pageDigests } from '../../src/pdf/pages.js';
import type { RawObject } from '../../src/pdf/raw-object.js';
import { PdfFile } from '../../src/pdf/read.js';
import { isSealed } from '../../src/pdf/seal.js';
import { packing, stream, writePdf } from '../../src/pdf/write.js';

const raw = (number: number, body: string | Uint8Array, isStream = false): RawObject => ({
  number,
  body: Buffer.from(body as string),
  isStream,
});
const IDENTITY = { root: 1, info: 2, id: 'ab'.repeat(32) };

/** The smallest PDF with a page that shows `text`, with more objects of its own. */
const small = (text: string, more: readonly RawObject[] = [], catalog = '') =>
  writePdf(
    [
      packing([
        raw(1, `<</Type /Catalog /Pages 3 0 R ${catalog}>>`),
        raw(2, '<</Title (x)>>'),
        raw(3, '<</Type /Pages /Kids [4 0 R] /Count 1>>'),
        raw(4, '<</Type /Page /Parent 3 0 R /MediaBox [0 0 100 100] /Contents 5 0 R>>'),
        raw(5, stream('', Buffer.from(text)), true),
        ...more,
      ]),
    ],
    IDENTITY,
  );

/** A file with one embedded file and a manifest. */
const book = (manifest: object | string, content: Buffer, path: string) => {
  const told = Buffer.from(typeof manifest === 'string' ? manifest : JSON.stringify(manifest));
  return small(
    'q Q',
    [
      raw(10, `<</Type /Filespec /UF (${MANIFEST}) /EF <</F 11 0 R>>>>`),
      raw(11, stream('/Type /EmbeddedFile', told), true),
      raw(12, `<</Type /Filespec /UF (${path}) /EF <</F 13 0 R>>>>`),
      raw(13, stream('/Type /EmbeddedFile /Filter /FlateDecode', content), true),
    ],
    `/Names <</EmbeddedFiles <</Names [(a) 10 0 R (b) 12 0 R]>>>>`,
  );
};

const MANIFEST_OF = (record: { path: string; bytes: number; sha256: string }) => ({
  shellbook: 1,
  kind: 'as-built book',
  shell: 'T-1',
  title: 'x',
  edition: 'shop',
  shop: 'x',
  revision: null,
  revision_date: null,
  tag: null,
  uncommitted: [],
  fingerprint: 'ab'.repeat(32),
  records: [record],
  withheld: [],
  photos: [],
  pictures: {},
  pages: [],
  homes: {},
});

describe('a PDF as it is written', () => {
  it('is read by the object library, and by our own reader, with the same objects', async () => {
    const bytes = await small('(hello) Tj');
    const theirs = await PDFDocument.load(bytes, { updateMetadata: false });
    expect([theirs.getPageCount(), theirs.getTitle()]).toEqual([1, 'x']);
    expect(pageDigests(PdfFile.open(bytes))).toHaveLength(1);
    expect(isSealed(PdfFile.open(bytes))).toBe(true);
  });

  it('shows the same, by its digests, however another program packs it', async () => {
    const bytes = await small('(hello) Tj');
    const load = () => PDFDocument.load(bytes, { updateMetadata: false });
    for (const useObjectStreams of [true, false]) {
      const again = await (await load()).save({ useObjectStreams });
      expect(pageDigests(PdfFile.open(again))).toEqual(pageDigests(PdfFile.open(bytes)));
    }
    expect(pageDigests(PdfFile.open(await small('(hallo) Tj')))).not.toEqual(pageDigests(PdfFile.open(bytes)));
  });

  it('is read with what was added to it later', async () => {
    const bytes = await small('(hello) Tj');
    const document = await PDFDocument.load(bytes, { forIncrementalUpdate: true, updateMetadata: false });
    document.getPage(0).node.set(PDFName.of('Rotate'), document.context.obj(90));
    const added = PdfFile.open(await document.save());
    expect(pageDigests(added)).not.toEqual(pageDigests(PdfFile.open(bytes)));
    expect(isSealed(added)).toBe(false);
  });
});

describe('a PDF that means harm', () => {
  it('unpacks to no more than it says', async () => {
    const bomb = deflateSync(Buffer.alloc(50e6));
    const manifest = MANIFEST_OF({ path: 'shop.yaml', bytes: 1000, sha256: 'ab'.repeat(32) });
    const opened = openBook(await book(manifest, bomb, 'shop.yaml'));
    const read = opened.manifest;
    if ('fault' in read) throw new Error(read.fault);
    const before = process.memoryUsage().arrayBuffers;
    expect(carriedRecords(opened, read.manifest)).toEqual([
      { path: 'shop.yaml', fault: expect.stringContaining('unpacks to more than') },
    ]);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(10e6);
  });

  it.each([
    '../x.yaml',
    'library/../../x.yaml',
    '/etc/x.yaml',
    'library//x.yaml',
    'library/.git/config',
    'shells/T-1/..\\x.yaml',
    'shells/T-1/a:b.yaml',
    'shells/T-1/-rf',
    'shells/T-1/nul\u0000.yaml',
    'shells/T-1/\u202elmay.exe',
    'shells/T-2/shell.yaml',
    'C:/x.yaml',
    'elsewhere/x.yaml',
  ])('has no way out of the folder: %j', (path) => {
    const read = readManifest(JSON.stringify(MANIFEST_OF({ path, bytes: 1, sha256: 'ab'.repeat(32) })));
    expect(read).toHaveProperty('fault');
  });

  it('names no file twice, whatever the case of its letters', () => {
    const one = { path: 'library/a.yaml', bytes: 1, sha256: 'ab'.repeat(32) };
    const twice = { ...MANIFEST_OF(one), records: [one, { ...one, path: 'library/A.yaml' }] };
    expect(readManifest(JSON.stringify(twice))).toEqual({ fault: expect.stringContaining('twice') });
  });

  it.each(['', '{', '[]', 'null', '{"shellbook":2}'])('has a manifest that is none: %j', async (text) => {
    expect(openBook(await book(text, deflateSync('x'), 'shop.yaml')).manifest).toHaveProperty('fault');
  });

  it('leads round in circles to an end', async () => {
    const pages = [raw(3, '<</Type /Pages /Kids [3 0 R 4 0 R] /Count 1>>')];
    const round = await small('q Q', pages);
    expect(() => pageDigests(PdfFile.open(round))).toThrow(/circle/u);
    const chain = await small('q Q', [raw(20, '21 0 R'), raw(21, '20 0 R')], '/Names 20 0 R');
    expect(() => openBook(chain)).toThrow(/circle/u);
    const names = await small('q Q', [raw(20, '<</Kids [20 0 R]>>')], '/Names <</EmbeddedFiles 20 0 R>>');
    expect(() => openBook(names)).toThrow(/carries no record/u);
  });

  it('nests without end, and is refused', async () => {
    const deep = await small('q Q', [raw(20, `${'['.repeat(20_000)}${']'.repeat(20_000)}`)], '/Names 20 0 R');
    expect(() => openBook(deep)).toThrow();
    const digest = await small('q Q', [raw(3, '<</Type /Pages /Kids [6 0 R] /Count 1>>'), raw(6, NESTED)]);
    expect(pageDigests(PdfFile.open(digest))).toEqual([undefined]);
  });
});

const NESTED = `<</Type /Page /Parent 3 0 R /Resources ${'<</A '.repeat(100)}1${'>>'.repeat(100)}>>`;
