/** Pictures that unpack to more than they are, that are not what their name says, that fetch others, and that lead out of the store. */
import { randomBytes } from 'node:crypto';
import {
  linkSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { constants, deflateRawSync, deflateSync } from 'node:zlib';
import fc from 'fast-check';
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { preparePhotos } from '../../src/book/photos.js';
import type { Photo } from '../../src/records/index.js';
import { readPictures } from '../../src/store/phone-pictures.js';
import { photoFacts } from '../../src/store/photo-facts.js';
import { readStoreText } from '../../src/store/read.js';
import { shellbook } from '../cli/printed-book.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';
import { updateFile } from '../store/update-file.js';

let store: SmallStore;
let away: string;
beforeEach(async () => {
  store = await laySmallStore({ 'shells/T-1/photos/photos.yaml': '- {id: P-1, file: p1.jpg, of: [FL-1], taken: 2026-04-07}\n' });
  away = mkdtempSync(path.join(tmpdir(), 'shellbook-away-'));
});
afterEach(() => {
  store.remove();
  rmSync(away, { recursive: true, force: true });
});

const inStore = (name: string): string => path.join(store.root, name);
const PHOTO = 'shells/T-1/photos/p1.jpg';

/** ISO/IEC 15948, annex D: the checksum of a chunk. */
function checksum(bytes: Uint8Array): number {
  let sum = -1;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit++) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return ~sum >>> 0;
}

/** PNG (ISO/IEC 15948) of any size that its head claims, over so many bytes of nothing. */
function pngThatClaims(
  width: number,
  height: number,
  bytes: number,
  before: readonly (readonly [string, Buffer])[] = [],
): Buffer {
  const chunk = (kind: string, data: Uint8Array): Buffer => {
    const body = Buffer.concat([Buffer.from(kind, 'latin1'), data]);
    const head = Buffer.alloc(4);
    const sum = Buffer.alloc(4);
    head.writeUInt32BE(data.length);
    sum.writeUInt32BE(checksum(body));
    return Buffer.concat([head, body, sum]);
  };
  const size = Buffer.alloc(13);
  size.writeUInt32BE(width, 0);
  size.writeUInt32BE(height, 4);
  size.set([8, 2, 0, 0, 0], 8);
  const packed = deflateSync(Buffer.alloc(bytes));
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', size),
    ...before.map(([kind, data]) => chunk(kind, data)),
    chunk('IDAT', packed),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** JPEG (ITU-T T.81) whose frame header says another size than what follows it. */
async function jpegThatClaims(width: number, height: number): Promise<Buffer> {
  const bytes = await sharp({ create: { width: 64, height: 64, channels: 3, background: '#446688' } })
    .jpeg()
    .toBuffer();
  const frame = bytes.indexOf(Buffer.from([0xff, 0xc0]));
  bytes.writeUInt16BE(height, frame + 5);
  bytes.writeUInt16BE(width, frame + 7);
  return bytes;
}

const svgWith = (href: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="64" height="64"><script>1</script><image xlink:href="${href}" width="64" height="64"/></svg>`;

const ENTITIES = `<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>${svgWith('x').replace('<script>1</script>', '<text>&x;</text>')}`;

/** PNG, 11.3.2.3: a name, a zero byte, the way of packing, the packed profile. */
const profile = (packed: Buffer): Buffer => Buffer.concat([Buffer.from('icc\0\0', 'latin1'), packed]);

/** 2³⁰ zero bytes packed (RFC 1950, 1951): one block of them, flushed to a whole byte, again and again. Its sum is left out. */
function gigabyte(): Buffer {
  const block = deflateRawSync(Buffer.alloc(2 ** 24), { finishFlush: constants.Z_FULL_FLUSH });
  return Buffer.concat([Buffer.from([0x78, 0x9c]), ...Array.from({ length: 64 }, () => block), Buffer.from([3, 0])]);
}

const LIARS: readonly (readonly [string, () => Promise<Buffer> | Buffer])[] = [
  [
    '200 million pixels, honest',
    () =>
      sharp({ create: { width: 20_000, height: 10_000, channels: 3, background: '#888888' }, limitInputPixels: false })
        .png({ compressionLevel: 9 })
        .toBuffer(),
  ],
  ['200 million pixels, of which few are there', () => pngThatClaims(20_000, 10_000, 1000)],
  ['four thousand million pixels', () => pngThatClaims(65_535, 65_535, 1000)],
  ['as many as a head can claim', () => pngThatClaims(0x7fffffff, 0x7fffffff, 10)],
  ['a colour profile that unpacks to a gigabyte', () => pngThatClaims(8, 8, 200, [['iCCP', profile(gigabyte())]])],
  ['a colour profile of five million bytes', () => pngThatClaims(8, 8, 200, [['iCCP', profile(deflateSync(randomBytes(5e6)))]])],
  ['a text of five million bytes before its pixels', () => pngThatClaims(8, 8, 200, [['tEXt', Buffer.alloc(5e6, 'a')]])],
  [
    'two thousand chunks before its pixels',
    () =>
      pngThatClaims(
        8,
        8,
        200,
        Array.from({ length: 2000 }, () => ['tEXt', Buffer.from('a\0b')]),
      ),
  ],
  ['a JPEG that claims 65,500 by 65,500', () => jpegThatClaims(65_500, 65_500)],
  ['few pixels over a hundred million bytes', () => pngThatClaims(8, 8, 1e8).subarray(0, 60_000)],
  ['an SVG that shows another file', () => Buffer.from(svgWith('file:///etc/hostname'))],
  ['an SVG with an entity of another file', () => Buffer.from(ENTITIES)],
  ['an SVG that is packed', () => Buffer.from('H4sIAAAAAAAAA7Mpzi/VTc8vSgUAAAD//w==', 'base64')],
  ['a PDF', () => Buffer.from('%PDF-1.7\n1 0 obj<</Type/Catalog>>endobj\ntrailer<</Root 1 0 R>>\n%%EOF')],
  ['HTML', () => Buffer.from('<!doctype html><script>alert(1)</script>')],
  ['a program', () => readFileSync(process.execPath).subarray(0, 4096)],
  ['an empty file', () => Buffer.alloc(0)],
];

describe('a picture that lies', () => {
  it.each(LIARS)('is refused wherever pictures come in: %s', async (_what, made) => {
    const from = process.cpuUsage();
    const bytes = await made();
    const cost = process.cpuUsage(from);
    writeFileSync(path.join(away, 'IMG_1.jpg'), bytes);
    const { pictures, refused } = await readPictures(away, () => {});
    expect([pictures.length, refused.get('IMG_1.jpg')]).toEqual([
      0,
      expect.stringMatching(/cannot be read as a picture|million pixels|colour profile|before its pixels/u),
    ]);

    store.write(PHOTO, bytes);
    const facts = await photoFacts(await readStoreText(store.root), 'T-1', undefined);
    expect(facts.get(PHOTO)?.look).toBeUndefined();

    const [one] = (await preparePhotos([{ id: 'P-1', file: 'p1.jpg' } as Photo], async () => bytes)).all;
    expect([one?.bytes, one?.missing]).toEqual([undefined, expect.stringMatching(/picture|pixels|profile|not in the record/u)]);
    const { user } = process.cpuUsage(from);
    expect((user - cost.user) / 1e6).toBeLessThan(10);
    expect(process.memoryUsage().rss / 1e6).toBeLessThan(1500);
  });

  it('is told, and no file of the machine is shown through it, by every command', async () => {
    writeFileSync(
      path.join(away, 'secret.png'),
      await sharp({ create: { width: 64, height: 64, channels: 3, background: '#ff0000' } })
        .png()
        .toBuffer(),
    );
    store.write(PHOTO, svgWith(`file://${path.join(away, 'secret.png')}`));
    const { status, messages } = await shellbook(store.root, 'check', 'T-1');
    expect([status, messages.includes('Unexpected fault')]).toEqual([1, false]);
    const [one] = (await preparePhotos([{ id: 'P-1', file: 'p1.jpg' } as Photo], async () => readFileSync(inStore(PHOTO)))).all;
    expect(one?.bytes).toBeUndefined();
  });

  it('may carry any Exif, which is read in a moment or not at all', async () => {
    const whole = await sharp({ create: { width: 16, height: 16, channels: 3, background: '#446688' } })
      .jpeg()
      .withExif({
        IFD0: { Make: 'x'.repeat(40) },
        IFD2: { DateTimeOriginal: '2026:04:07 14:30:05' },
        IFD3: { GPSImgDirection: '210/1' },
      })
      .toBuffer();
    const end = whole.indexOf(Buffer.from([0xff, 0xdb]));
    const change = fc.tuple(fc.integer({ min: 20, max: end - 1 }), fc.integer({ min: 0, max: 255 }));
    await fc.assert(
      fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 12 }), async (changes) => {
        const bytes = Buffer.from(whole);
        for (const [at, value] of changes) bytes[at] = value;
        writeFileSync(path.join(away, 'IMG_1.jpg'), bytes);
        const from = process.cpuUsage();
        const { pictures, refused } = await readPictures(away, () => {});
        expect(pictures.length + refused.size).toBe(1);
        for (const { taken } of pictures)
          if (taken !== undefined) expect(taken).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d(?::\d\d)?$/u);
        expect(process.cpuUsage(from).user / 1e6).toBeLessThan(5);
      }),
      { numRuns: 150 },
    );
  });
});

describe('a photo that leads out of the store', () => {
  const secret = (): string => path.join(away, 'secret.jpg');
  beforeEach(async () => {
    writeFileSync(
      secret(),
      await sharp({ create: { width: 64, height: 64, channels: 3, background: '#ff0000' } })
        .jpeg()
        .toBuffer(),
    );
    mkdirSync(inStore('shells/T-1/photos'), { recursive: true });
  });

  it.each([
    '../../../../secret.jpg',
    '/etc/hostname',
    'a/../../b.jpg',
    '..',
    './x.jpg',
    'C:\\x.jpg',
    'a\\..\\b.jpg',
    'x\u0000.jpg',
    'file:///etc/hostname',
    'x:stream.jpg',
  ])('by its name is refused: %j', async (file) => {
    store.write('shells/T-1/photos/photos.yaml', `- ${JSON.stringify({ id: 'P-1', file, of: ['FL-1'], taken: '2026-04-07' })}\n`);
    const { status, answer } = await shellbook(store.root, 'check', 'T-1', '--json');
    expect(status).toBe(1);
    expect(
      JSON.parse(answer).findings.some((one: { message: string }) => one.message.includes('a file in the photos folder')),
    ).toBe(true);
  });

  it('by a link is not read, nor hashed, nor taken in', async () => {
    symlinkSync(secret(), inStore(PHOTO));
    const text = await readStoreText(store.root);
    expect([text.photos.has(PHOTO), text.refused?.get(PHOTO)]).toEqual([
      false,
      expect.stringContaining('leads out of the store'),
    ]);
    expect((await photoFacts(text, 'T-1', undefined)).size).toBe(0);
    const phone = path.join(away, 'phone');
    mkdirSync(phone);
    symlinkSync(secret(), path.join(phone, 'IMG_1.jpg'));
    symlinkSync(away, path.join(phone, 'folder'));
    expect(await readPictures(phone, () => {})).toMatchObject({ pictures: [], refused: new Map(), others: 0 });
  });

  it('through its folder is not written to', async () => {
    const phone = path.join(away, 'phone');
    mkdirSync(phone);
    writeFileSync(path.join(phone, 'IMG_1.jpg'), readFileSync(secret()));
    rmSync(inStore('shells/T-1/photos'), { recursive: true });
    mkdirSync(path.join(away, 'theirs'));
    symlinkSync(path.join(away, 'theirs'), inStore('shells/T-1/photos'));
    const { status, messages } = await shellbook(store.root, 'photos', 'T-1', phone);
    expect([status, messages]).toEqual([2, expect.stringContaining('leads out of the store')]);
    expect(readdirSync(path.join(away, 'theirs'))).toEqual([]);
  });
});

/** Neither Git nor a book can bring a hard link along; whoever can make one has the machine already. A write still stays in the store. */
describe('a hard link', () => {
  it('has its other name left alone by a write', async () => {
    const file = 'shells/T-1/members.yaml';
    writeFileSync(path.join(away, 'theirs.yaml'), readFileSync(inStore(file)));
    rmSync(inStore(file));
    linkSync(path.join(away, 'theirs.yaml'), inStore(file));
    expect(lstatSync(inStore(file)).nlink).toBe(2);
    const before = readFileSync(path.join(away, 'theirs.yaml'), 'utf8');
    await updateFile(store.root, file, () => '- {id: FL-9}\n');
    expect([readFileSync(inStore(file), 'utf8'), readFileSync(path.join(away, 'theirs.yaml'), 'utf8')]).toEqual([
      '- {id: FL-9}\n',
      before,
    ]);
  });
});
