import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { deflateSync } from 'node:zlib';
import { PDFRawStream } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { pagesOf } from '../../src/pdf/pages.js';
import { PdfFile } from '../../src/pdf/read.js';
import { bookOf, printSmallBook, shellbook } from './printed-book.js';
import type { SmallStore } from './small-store.js';

let store: SmallStore;
let whole: Buffer;
const away = mkdtempSync(path.join(tmpdir(), 'shellbook-damaged-'));
const file = path.join(away, 'damaged.pdf');
beforeAll(async () => {
  store = await printSmallBook();
  whole = readFileSync(bookOf(store, 'shop'));
});
afterAll(() => {
  store?.remove();
  rmSync(away, { recursive: true, force: true });
});

async function verifyWith(change: (bytes: Buffer) => Buffer | undefined) {
  const bytes = Buffer.from(whole);
  writeFileSync(file, change(bytes) ?? bytes);
  const { status, answer, messages } = await shellbook(away, 'verify', file, '--json');
  return { status, messages, told: answer === '' ? undefined : JSON.parse(answer) };
}

/** Changes one bit in the middle of a stretch of the file. */
const flipWithin = (stretch: Uint8Array) => (bytes: Buffer) => {
  const at = bytes.indexOf(stretch);
  if (at < 0) throw new Error('the stretch is not in the file');
  const middle = at + Math.floor(stretch.length / 2);
  bytes[middle] = (bytes[middle] as number) ^ 1;
  return undefined;
};

/** How an embedded record file stands in the book: zlib (RFC 1950) at its highest level. */
const packed = (name: string): Uint8Array => deflateSync(readFileSync(path.join(store.root, name)), { level: 9 });

/** A sample; `npm run fuzz` changes a thousand. */
const BYTES = process.env.SHELLBOOK_FUZZ === undefined ? 40 : 1000;

describe('one byte that changed', () => {
  it('is never overlooked, wherever it is, and told in a sentence', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(whole.length - 1), fc.integer({ min: 1, max: 255 }), async (at, mask) => {
        const { status, told, messages } = await verifyWith((bytes) => {
          bytes[at] = (bytes[at] as number) ^ mask;
          return undefined;
        });
        if (status === 2)
          expect(messages).toMatch(/^shellbook: \S*damaged\.pdf (?:cannot be read as a book|is damaged): [^\n]+\n$/u);
        else expect([status, told.matches_itself, told.differences.length > 0]).toEqual([1, false, true]);
        expect(messages).not.toMatch(/Unexpected fault|\bat .*:\d+:\d+/u);
      }),
      { numRuns: BYTES },
    );
  });

  it('is named in a record file', async () => {
    const { status, told } = await verifyWith(flipWithin(packed('shells/T-1/members.yaml')));
    expect([status, told.matches_itself]).toEqual([1, false]);
    expect(told.differences).toContainEqual(expect.objectContaining({ part: 'file', name: 'shells/T-1/members.yaml' }));
  });

  it('is named in a photo that travels along', async () => {
    const { told } = await verifyWith(flipWithin(readFileSync(path.join(store.root, 'shells/T-1/photos/p1.jpg'))));
    expect(told.differences).toEqual([
      expect.objectContaining({ part: 'photo', message: expect.stringMatching(/^Photo P-1 .*is not as it was/u) }),
    ]);
  });

  it('is named on the page where it stands', async () => {
    const pdf = PdfFile.open(whole);
    const page = pagesOf(pdf)[3];
    const contents = page && pdf.get(page, 'Contents');
    if (!(contents instanceof PDFRawStream)) throw new Error('page 4 has no contents');
    const { told } = await verifyWith(flipWithin(contents.contents));
    expect(told.differences).toEqual([expect.objectContaining({ part: 'page', name: '4', with: 'itself' })]);
  });

  it('is named in a printed picture, with its photo', async () => {
    // A JPEG begins with SOI and ends with EOI (ISO/IEC 10918-1, B.1.1.3); the first one is the picture on the page.
    const from = whole.indexOf(Buffer.from('ffd8ff', 'hex'));
    const { told } = await verifyWith(flipWithin(whole.subarray(from, whole.indexOf(Buffer.from('ffd9', 'hex'), from))));
    expect(told.differences).toEqual([
      expect.objectContaining({
        part: 'picture',
        message: expect.stringMatching(/^Page \d+: its picture of photo P-1 is not as printed/u),
      }),
    ]);
  });

  it('is found in the manifest', async () => {
    const { status, told, messages } = await verifyWith((bytes) => {
      // The digests in it are text: one digit becomes another, and everything still unpacks.
      const at = bytes.indexOf('/Subtype /application#2Fjson');
      const start = bytes.indexOf('stream\n', at) + 'stream\n'.length;
      bytes[start + 400] = (bytes[start + 400] as number) ^ 4;
      return undefined;
    });
    expect(status).toBe(1);
    expect([messages, told.differences[0]]).toEqual([expect.anything(), expect.objectContaining({ part: 'manifest' })]);
  });
});

describe('a book cut short or padded', () => {
  it.each([0, 1, 1000, 50_000])('to %i bytes is refused', async (length) => {
    const { status, messages } = await verifyWith((bytes) => bytes.subarray(0, length));
    expect([status, messages.trim().split('\n').length]).toEqual([2, 1]);
  });

  it('with something after its end is not the file that was printed', async () => {
    const { status } = await verifyWith((bytes) => Buffer.concat([bytes, Buffer.from('\n')]));
    expect(status).toBe(1);
  });
});

describe('what is damaged', () => {
  it('is not answered from', async () => {
    await verifyWith(flipWithin(packed('shells/T-1/members.yaml')));
    const { status, messages, answer } = await shellbook(away, 'where', 'T-1', 'DC-1', '--book', file);
    expect([status, answer, messages]).toEqual([1, '', expect.stringContaining('has changed since it was sealed')]);
  });

  it('is left out when the rest is recovered, and told', async () => {
    await verifyWith(flipWithin(packed('shells/T-1/members.yaml')));
    const { status, answer } = await shellbook(away, 'recover', file, 'rest', '--json');
    expect(status).toBe(1);
    expect(JSON.parse(answer).damaged).toEqual([expect.stringMatching(/^shells\/T-1\/members\.yaml cannot be read/u)]);
    expect(readdirSync(path.join(away, 'rest/shells/T-1'))).not.toContain('members.yaml');
    expect(readdirSync(path.join(away, 'rest/shells/T-1'))).toContain('welds.yaml');
  });
});
