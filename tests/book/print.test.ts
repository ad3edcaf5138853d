import { createHash } from 'node:crypto';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPrinter, type PrintedBook, type Printer } from '../../src/book/index.js';
import { type ReadPdf, readPdf } from './read-pdf.js';
import { FINGERPRINT, HISTORY, smallAssessment } from './small-store.js';

let printer: Printer;
let book: PrintedBook;
let again: PrintedBook;
let pdf: ReadPdf;

const print = async (): Promise<PrintedBook> => {
  const photo = await sharp({ create: { width: 60, height: 40, channels: 3, background: '#446688' } })
    .withExif({ IFD0: { Copyright: 'X' }, IFD3: { GPSLatitude: '47/1 30/1 0/1', GPSLatitudeRef: 'N' } })
    .jpeg()
    .toBuffer();
  return printer.print({
    assessment: smallAssessment(),
    edition: 'service',
    fingerprint: FINGERPRINT,
    history: HISTORY,
    photoFile: async (id) => (id === 'P-1' ? photo : undefined),
  });
};

beforeAll(async () => {
  printer = openPrinter();
  book = await print();
  again = await print();
  pdf = await readPdf(book.pdf);
});
afterAll(() => printer?.close());

describe('the printed book', () => {
  it('has the planned pages, each with its running head and foot', () => {
    expect(pdf.pages.length).toBe(book.pageCount);
    pdf.pages.slice(1).forEach((page, at) => {
      expect(page.text).toContain('Shell T-1');
      expect(page.text).toContain(`Page ${at + 2} of ${book.pageCount}`);
      expect(page.text).toContain(`Fingerprint ${FINGERPRINT.slice(0, 12)}`);
    });
  });

  it('lies on letter paper, upright or turned', () => {
    // DRW-07: 8.5 in × 11 in at 72 points to the inch.
    const sizes = new Set(pdf.pages.map(({ size }) => size.map((points) => Math.round(points)).join(' × ')));
    expect(sizes).toEqual(new Set(['612 × 792', '792 × 612']));
  });

  it('warns of the photo that is missing, and of nothing else', () => {
    expect(book.warnings).toEqual([expect.stringContaining('P-2')]);
  });

  it('leads each link to the page where its target stands', () => {
    const links = pdf.pages.flatMap((page) => page.links);
    expect(links.length).toBeGreaterThan(200);
    for (const link of links) expect([link.to, link.page]).toEqual([link.to, book.pages.get(link.to)]);
  });

  it('prints beside each entry the number of the page where it stands', () => {
    const numbered = pdf.pages.flatMap((page) => page.links).filter((link) => /^\d+$/u.test(link.text));
    expect(numbered.length).toBeGreaterThan(60);
    for (const link of numbered) expect([link.to, Number(link.text)]).toEqual([link.to, book.pages.get(link.to)]);
  });

  it('shows each record’s id on the page that is its home', () => {
    for (const [id, anchor] of [
      ['DC-12/S1', 'r-DC-12.2fS1'],
      ['CB-44', 'r-CB-44'],
      ['AP-11', 'r-AP-11'],
      ['TK-5', 'r-TK-5'],
    ] as const) {
      const page = pdf.pages[(book.pages.get(anchor) as number) - 1];
      expect(page?.text).toContain(id);
    }
  });

  it('has bookmarks three levels deep, chapters first', () => {
    expect(pdf.outline.map((one) => one.title)).toContain('Service access index');
    const panels = pdf.outline.find((one) => one.title === 'Access panels');
    expect(panels?.items.flatMap((one) => one.items.map((two) => two.title))).toContain('AP-11');
  });

  it('is tagged, titled, in English, and dated by the record', () => {
    expect(pdf.tagged).toBe(true);
    expect(pdf.title).toBe('Shell T-1, Travelling test bench: as-built book, Service edition');
    expect(pdf.language).toBe('en');
    // 2026-07-02T09:30+02:00 is 07:30 in universal time.
    expect(pdf.created).toBe('D:20260702073000Z');
  });

  it('is the same to the byte when printed twice', () => {
    const hash = (one: PrintedBook) => createHash('sha256').update(one.pdf).digest('hex');
    expect(hash(again)).toBe(hash(book));
  });

  it('carries no place of a photo', () => {
    const bytes = Buffer.from(book.pdf).toString('latin1');
    // The head of an Exif block in a JPEG, and its name in XMP. Shorter words turn up in any compressed stream by chance.
    expect(bytes).not.toMatch(/Exif\0\0|GPSLatitude|GPSInfo/u);
  });
});
