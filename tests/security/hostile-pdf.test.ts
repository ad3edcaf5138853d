/**
 * PDFs of a stranger that are small and ask for work without end. Each ends with one fault, within the steps that a file of its size may
 * cost: steps, not seconds, so that the same file ends alike on every machine. Clauses: ISO 32000-2.
 */
import { deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { checkSeal } from '../../src/archive/check-seal.js';
import { MANIFEST } from '../../src/archive/manifest.js';
import { carriedRecords, openBook } from '../../src/archive/open-book.js';
import { verifyItself } from '../../src/archive/verify.js';
import { Budget } from '../../src/pdf/budget.js';
import { PdfFault } from '../../src/pdf/fault.js';
import { lacksGlyph } from '../../src/pdf/glyphs.js';
import { pageDigests } from '../../src/pdf/pages.js';
import { PdfFile } from '../../src/pdf/read.js';

const LARGEST = 500_000;

const HEX = 'ab'.repeat(32);
const manifest = (more: object = {}): string =>
  JSON.stringify({
    ...{ shellbook: 1, kind: 'as-built book', seal: 2, shell: 'T-1', title: '', edition: 'owner', shop: '', revision: null },
    ...{ revision_date: null, tag: null, uncommitted: [], fingerprint: HEX, records: [], withheld: [], photos: [], pictures: {} },
    ...{ pages: [], homes: {}, ...more },
  });

type Body = string | Buffer;
const raw = (dict: string, bytes: Buffer, length = true): Buffer =>
  Buffer.concat([
    Buffer.from(`<<${dict}${length ? ` /Length ${bytes.length}` : ''}>>\nstream\n`),
    bytes,
    Buffer.from('\nendstream'),
  ]);
const packed = (dict: string, bytes: Buffer): Buffer => raw(`${dict} /Filter /FlateDecode`, deflateSync(bytes, { level: 9 }));

/** A file of these objects, numbered from 1, with a plain table (7.5.4); `end` in the place of the trailer. */
function file(objects: readonly Body[], trailer = '/Root 1 0 R'): Buffer {
  const parts: Buffer[] = [Buffer.from('%PDF-1.7\n')];
  const places: number[] = [];
  let size = 9;
  for (const [i, body] of objects.entries()) {
    const object = Buffer.concat([Buffer.from(`${i + 1} 0 obj\n`), Buffer.from(body as string), Buffer.from('\nendobj\n')]);
    places.push(size);
    parts.push(object);
    size += object.length;
  }
  const rows = places.map((at) => `${String(at).padStart(10, '0')} 00000 n \n`).join('');
  const table = `xref\n0 ${places.length + 1}\n0000000000 65535 f \n${rows}trailer\n<</Size ${places.length + 1} ${trailer}>>\nstartxref\n${size}\n%%EOF\n`;
  return Buffer.concat([...parts, Buffer.from(table)]);
}

/** Catalogue, pages and a manifest: objects 1 to 4; others follow from 5. */
const book = (others: readonly Body[], { catalog = '', pages = '/Kids [] /Count 0', text = manifest() } = {}): Buffer =>
  file([
    `<</Type /Catalog /Pages 2 0 R /Names <</EmbeddedFiles <</Names [(m) 3 0 R]>>>> ${catalog}>>`,
    `<</Type /Pages ${pages}>>`,
    `<</Type /Filespec /UF (${MANIFEST}) /EF <</F 4 0 R>>>>`,
    packed('/Type /EmbeddedFile', Buffer.from(text)),
    ...others,
  ]);

const zeros = (bytes: number): Buffer => Buffer.alloc(bytes, 0x20);

const HOSTILE: Readonly<Record<string, () => Buffer>> = {
  'a table of twenty million rows (7.5.8)': () => {
    const rows = packed('/Type /XRef /Size 20000000 /W [1 1 1] /Root 1 0 R', Buffer.alloc(60_000_000, 1));
    const start = 9;
    return Buffer.concat([Buffer.from('%PDF-1.7\n1 0 obj\n'), rows, Buffer.from(`\nendobj\nstartxref\n${start}\n%%EOF\n`)]);
  },
  'a table that a thousand others come before (7.5.6)': () => {
    const rows = '0000000009 00000 n \n'.repeat(20);
    const parts = [Buffer.from('%PDF-1.7\n')];
    let size = 9;
    let before = 0;
    for (let i = 0; i < 900; i++) {
      const part = Buffer.from(`xref\n0 20\n${rows}trailer\n<</Root 1 0 R ${before > 0 ? `/Prev ${before}` : ''}>>\n`);
      before = size;
      parts.push(part);
      size += part.length;
    }
    return Buffer.concat([...parts, Buffer.from(`startxref\n${before}\n%%EOF\n`)]).subarray(-LARGEST);
  },
  'a tree of names that holds itself a thousand times (7.9.6)': () =>
    file([`<</Type /Catalog /Names <</EmbeddedFiles 2 0 R>>>>`, `<</Kids [${'2 0 R '.repeat(1000)}]>>`]),
  'a tree of names with a thousand branches at each of twenty levels': () =>
    file([
      '<</Type /Catalog /Names <</EmbeddedFiles 2 0 R>>>>',
      ...Array.from({ length: 20 }, (_, i) => `<</Kids [${`${i + 3} 0 R `.repeat(1000)}]>>`),
      '<</Names []>>',
    ]),
  'thirteen thousand pages with the same fifty megabytes of text': () => {
    const kids = Array.from({ length: 13_000 }, () => '<</Type /Page /Contents 5 0 R>>').join(' ');
    return book([packed('', zeros(50_000_000))], { pages: `/Kids [${kids}]` });
  },
  'one page with the same text a thousand times': () =>
    book(
      [
        packed('', zeros(5_000_000)),
        '<</Type /Page /Parent 2 0 R /Contents [5 0 R 5 0 R]>>'.replace('[5 0 R 5 0 R]', `[${'5 0 R '.repeat(1000)}]`),
      ],
      {
        pages: '/Kids [6 0 R]',
      },
    ),
  'one page with the same picture under ten thousand names': () => {
    const names = Array.from({ length: 10_000 }, (_, i) => `/X${i} 5 0 R`).join(' ');
    return book(
      [raw('/Type /XObject /Subtype /Image', Buffer.alloc(200_000)), `<</Type /Page /Resources <</XObject <<${names}>>>>>>`],
      {
        pages: '/Kids [6 0 R]',
      },
    );
  },
  'a stream of objects that are all the same one (7.5.7)': () => {
    const head = Array.from({ length: 60_000 }, (_, i) => `${i + 100} 0`).join(' ');
    const inside = Buffer.from(`${head} [${'1 '.repeat(200_000)}]`);
    const pack = packed(`/Type /ObjStm /N 60000 /First ${head.length + 1}`, inside);
    const rows = Buffer.alloc(8 * 102);
    const row = (number: number, kind: number, first: number): void => {
      rows.writeUInt8(kind, number * 8);
      rows.writeUIntBE(first, number * 8 + 1, 5);
    };
    const start = Buffer.concat([Buffer.from('%PDF-1.7\n2 0 obj\n'), pack, Buffer.from('\nendobj\n')]);
    row(2, 1, 9);
    row(100, 2, 2);
    row(3, 1, start.length);
    const table = packed('/Type /XRef /Size 102 /W [1 5 2] /Root 100 0 R', rows);
    return Buffer.concat([start, Buffer.from('3 0 obj\n'), table, Buffer.from(`\nendobj\nstartxref\n${start.length}\n%%EOF\n`)]);
  },
  'three hundred streams without an end': () =>
    book(
      Array.from({ length: 300 }, () => `<</Type /XObject>>\nstream\n${'x'.repeat(1500)}`),
      {
        catalog: `/Dests <<${Array.from({ length: 300 }, (_, i) => `/D${i} ${i + 5} 0 R`).join(' ')}>>`,
      },
    ),
  'lists within lists, each twice': () =>
    book([...Array.from({ length: 55 }, (_, i) => `[${i + 6} 0 R ${i + 6} 0 R]`), '[1]'], { catalog: '/Dests 5 0 R' }),
  'a hundred thousand brackets': () => book(['['.repeat(100_000)], { catalog: '/Dests 5 0 R' }),
  'bookmarks that run in a circle (12.3.3)': () =>
    book(['<</First 6 0 R>>', '<</Title (a) /Next 7 0 R>>', '<</Title (b) /Next 6 0 R /First 6 0 R>>'], {
      catalog: '/Outlines 5 0 R',
    }),
  'a manifest of sixty megabytes': () =>
    file([
      `<</Type /Catalog /Names <</EmbeddedFiles <</Names [(m) 2 0 R]>>>>>>`,
      `<</Type /Filespec /UF (${MANIFEST}) /EF <</F 3 0 R>>>>`,
      packed('/Type /EmbeddedFile', zeros(60_000_000)),
    ]),
  'records of sixty megabytes': () => {
    const path = 'shells/T-1/welds.yaml';
    const names = `/Names <</EmbeddedFiles <</Names [(m) 3 0 R (w) 5 0 R]>>>>`;
    return file([
      `<</Type /Catalog /Pages 2 0 R ${names}>>`,
      '<</Type /Pages /Kids [] /Count 0>>',
      `<</Type /Filespec /UF (${MANIFEST}) /EF <</F 4 0 R>>>>`,
      packed('', Buffer.from(manifest({ records: [{ path, bytes: 6e7, sha256: HEX }] }))),
      `<</Type /Filespec /UF (${path}) /EF <</F 6 0 R>>>>`,
      packed('', zeros(60_000_000)),
    ]);
  },
};

describe('a hostile PDF of half a megabyte at most', () => {
  it.each(Object.keys(HOSTILE))('%s', (name) => {
    const bytes = (HOSTILE[name] as () => Buffer)();
    expect(bytes.length).toBeLessThanOrEqual(LARGEST);
    const budget = Budget.for(bytes.length);
    let fault: unknown;
    try {
      const opened = openBook(bytes, budget);
      const seal = checkSeal(opened);
      if ('manifest' in opened.manifest) carriedRecords(opened, opened.manifest.manifest);
      verifyItself(opened, seal);
    } catch (error) {
      fault = error;
    }
    // It is refused, or it was no trouble at all; a single unpacking may go over the edge by once the whole.
    if (fault !== undefined) expect(fault).toBeInstanceOf(PdfFault);
    expect(budget.spent).toBeLessThan(2 * budget.most);
  });

  it('costs no more than the whole of what it may, however often it is asked', () => {
    const bytes = (HOSTILE['one page with the same text a thousand times'] as () => Buffer)();
    const pdf = PdfFile.open(bytes);
    for (let i = 0; i < 20; i++) expect(() => pageDigests(pdf)).toThrow(PdfFault);
    expect(pdf.budget.spent).toBeLessThan(3 * pdf.budget.most);
  });
});

describe('the look for missing signs', () => {
  // Glyph 0 shown by its number is what the browser writes for a sign that no typeface has; nothing else is.
  it.each([
    ['<0000> Tj', true],
    ['<000A0000000B> Tj', true],
    ['<00000A> Tj', false],
    ['<000A00B0> Tj', false],
    ['<0A00000B> Tj', false],
    ['<0000> TJ', false],
    ['<0000 Tj', false],
  ])('of %s says %s', (text, lacking) => {
    expect(lacksGlyph(Buffer.from(text))).toBe(lacking);
  });

  it('goes over each byte once', () => {
    // Would take hours by any look that goes back: half a million beginnings, none with an end.
    for (const text of ['<0000'.repeat(400_000), `<${'0000'.repeat(500_000)}`, '<'.repeat(2_000_000)])
      expect(lacksGlyph(Buffer.from(text))).toBe(false);
  });
});
