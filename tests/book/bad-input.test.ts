import { randomBytes } from 'node:crypto';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openPrinter, type PrintedBook, type Printer } from '../../src/book/index.js';
import { withGlyphs } from '../../src/book/signs.js';
import { anchor } from '../../src/model/anchor.js';
import { type ReadPdf, readPdf } from './read-pdf.js';
import { FINGERPRINT, HISTORY, smallAssessment } from './small-store.js';

const LONG_ID = `GEN-${'W'.repeat(76)}`;
const CAPTION = `${'The rail before paint and again '.repeat(96)}end of the caption`;
const MARKUP =
  '</td></table><script>alert(1)</script><img src=x onerror=alert(1)> {{shell}} {{{title}}} {{#each this}} &amp; <b>bold</b>';
/** Hebrew, Arabic, Chinese, a face, and a mark that would turn the rest of the page around. */
const FOREIGN = 'left שלום right مرحبا and 中文注释很长 or 🙂 with \u202Eturned back';

const COMPONENTS = `
- {id: ${LONG_ID}, name: Generator of a long name, mass: 700 lb, at: [300 in, 0 in, -4 in], stage: walls, basis: weighed}
- {id: GEN, name: ${JSON.stringify(MARKUP)}, mass: 700 lb, at: [310 in, 0 in, -4 in], stage: walls, basis: weighed, note: ${JSON.stringify(FOREIGN)}}
`;
/** A valve with a name and an id that no column holds, for the page of a hurry. */
const LONG_VALVE = `VALVE-${'X'.repeat(74)}`;
const GAS = `
service: Propane
medium: gas
circuits:
  - {id: LP-1, name: Heater gas, size: 3/8 in copper}
nodes:
  - {id: LP-CYL, kind: source, name: Cylinder, at: [60 in, 40 in, -4 in]}
  - {id: ${LONG_VALVE}, kind: valve, name: ${JSON.stringify(FOREIGN)}, at: [64 in, 40 in, -2 in]}
runs:
  - {id: LP-1/1, circuit: LP-1, from: LP-CYL, to: ${LONG_VALVE}, date: 2026-04-07}
`;
const PHOTOS = `
- {id: P-1, file: p1.jpg, of: [DC-12/S1], taken: 2026-04-07, caption: ${JSON.stringify(CAPTION)}, stage: belly}
- {id: P-2, file: lost.jpg, of: [SF-L], caption: Rail before paint, stage: subframe}
- {id: P-3, file: cut.jpg, of: [SF-L], caption: ${JSON.stringify(MARKUP)}, stage: subframe}
- {id: P-4, file: huge.png, of: [SF-L], caption: Huge, stage: subframe}
`;

let printer: Printer;
let book: PrintedBook;
let pdf: ReadPdf;
let all: string;

beforeAll(async () => {
  const noise = randomBytes(120 * 90 * 3);
  const whole = await sharp(noise, { raw: { width: 120, height: 90, channels: 3 } })
    .jpeg()
    .toBuffer();
  const files: Record<string, Buffer> = {
    'P-1': whole,
    'P-3': whole.subarray(0, Math.floor(whole.length / 3)),
    // 200 million pixels in a few kilobytes.
    'P-4': await sharp({ create: { width: 20_000, height: 10_000, channels: 3, background: '#888888' }, limitInputPixels: false })
      .png({ compressionLevel: 9 })
      .toBuffer(),
  };
  printer = await openPrinter();
  book = await printer.print({
    assessment: smallAssessment({
      'shells/T-1/components.yaml': COMPONENTS,
      'shells/T-1/services/gas.yaml': GAS,
      'shells/T-1/photos/photos.yaml': PHOTOS,
    }),
    edition: 'shop',
    fingerprint: FINGERPRINT,
    history: HISTORY,
    photoFile: async (id) => files[id],
  });
  pdf = await readPdf(book.pdf);
  all = pdf.pages.map((page) => page.text).join('\n');
});
afterAll(() => printer?.close());

/** Words of the page where a record is at home. */
const homeOf = (id: string): string => pdf.pages[(book.pages.get(anchor(id)) as number) - 1]?.text ?? '';

describe('a book of bad input', () => {
  it('tells of every photo that is missing, cut off or far too large, here and in its place', () => {
    for (const id of ['P-2', 'P-3', 'P-4']) {
      expect(book.warnings.filter((one) => one.includes(`Photo ${id}:`)).length).toBe(1);
      expect(homeOf(id)).toMatch(/No picture: its file/u);
    }
    expect(book.warnings.some((one) => one.includes('Photo P-1:'))).toBe(false);
  });

  it('prints a caption of three thousand letters whole', () => {
    expect(CAPTION.length).toBeGreaterThan(3000);
    expect(all.replace(/\s+/gu, ' ')).toContain('end of the caption');
    expect(all.split('The rail before paint and again').length - 1).toBeGreaterThanOrEqual(96);
  });

  it('prints an id of eighty letters within its page', async () => {
    expect(LONG_ID.length).toBe(80);
    expect(homeOf(LONG_ID).replaceAll(' ', '')).toContain(LONG_ID);
    expect(pdf.widest).toBeLessThanOrEqual(1);
  });

  it('keeps the emergency plan to its scale beside such an id', () => {
    const page = pdf.pages[(book.pages.get('c-emergency') as number) - 1];
    expect(page?.text.replaceAll(' ', '')).toContain(LONG_VALVE);
    // Numbers in their shapes are 4.4 mm high, in points of 1/72 in; a page made smaller to fit would have smaller ones.
    const numbers = page?.pieces.filter(({ text }) => text === '2').map(({ sizePt }) => sizePt) ?? [];
    expect(numbers.length).toBeGreaterThanOrEqual(2);
    expect(Math.max(...numbers)).toBeCloseTo((4.4 * 72) / 25.4, 1);
  });

  it('prints HTML and template syntax as the letters that were typed', () => {
    for (const words of ['<script>alert(1)</script>', '{{shell}}', '{{{title}}}', '<b>bold</b>', '&amp;']) {
      expect(homeOf('GEN').replaceAll(' ', '')).toContain(words.replaceAll(' ', ''));
    }
  });

  it('prints signs that its typeface lacks as codes, and says so', () => {
    const home = homeOf('GEN');
    for (const code of ['U+05E9', 'U+0645', 'U+4E2D', 'U+1F642']) expect(home).toContain(code);
    expect(home).not.toMatch(/[\u0590-\u06ff\u4e00-\u9fff\u202e]/u);
    expect(home).toContain('turned back');
    expect(book.warnings.filter((one) => one.includes('typeface lacks')).length).toBe(1);
  });

  it('leaves no other word of warning', () => {
    const known = /^Photo P-[234]:|typeface lacks|taller than a page/u;
    expect(book.warnings.filter((one) => !known.test(one))).toEqual([]);
  });
});

describe('printable', () => {
  it('leaves what the typeface has as it is', () => {
    const words = 'Łódź, naïve: 5 × 3 − 2 ≠ '.replace('≠ ', '');
    expect(withGlyphs(words)).toEqual({ text: words, lacking: [] });
  });

  it('composes letters typed in parts', () => {
    expect(withGlyphs('e\u0301').text).toBe('é');
  });

  it('counts a long row of foreign signs instead of spelling it', () => {
    expect(withGlyphs('a 中文注释很长 b').text).toBe('a [U+4E2D U+6587 U+6CE8 U+91CA and 2 more signs] b');
  });
});
