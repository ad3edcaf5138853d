/**
 * No name that is typed, and none that comes in a sheet or a book, makes a file anywhere but in the store. Names in books, and bombs in
 * them: tests/pdf/pdf.test.ts. Links: tests/source/read-store.test.ts, tests/store/write.test.ts and pictures.test.ts beside this.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { deflateSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { carriedPhoto, openBook } from '../../src/archive/open-book.js';
import type { RawObject } from '../../src/pdf/raw-object.js';
import { packing, stream, writePdf } from '../../src/pdf/write.js';
import { shellbook } from '../cli/printed-book.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';

let store: SmallStore;
beforeEach(async () => {
  store = await laySmallStore();
});
afterEach(() => store.remove());

const OUT = [
  '../evil',
  '../../evil',
  path.join(tmpdir(), 'shellbook-evil'),
  'a/../../../evil',
  '..',
  '.',
  '.git',
  '-evil',
  'a\\..\\b',
  'a\nb',
  'a\0b',
  'a:b',
  ' evil',
  'evil/',
];

/** Everything that lies in a folder, with its contents. */
function everything(dir: string): string {
  const names = readdirSync(dir, { recursive: true, withFileTypes: true });
  return names
    .filter((one) => one.isFile() && !one.parentPath.includes('.git'))
    .map(
      (one) =>
        `${path.join(one.parentPath, one.name)} ${createHash('sha256')
          .update(readFileSync(path.join(one.parentPath, one.name)))
          .digest('hex')}`,
    )
    .sort()
    .join('\n');
}

describe('a name that leads out', () => {
  it.each(OUT)('makes no file: %j', async (name) => {
    const sheet = path.join(store.root, 'sheet.csv');
    writeFileSync(
      sheet,
      'id,part,stage,section,alloy,from,to\nFL-8,rail,floor,RT2x2x1/8,6061-T6,"20 in,0 in,4 in","80 in,0 in,4 in"\n',
    );
    const before = everything(store.root);
    const beside = readdirSync(path.dirname(store.root)).filter((one) => one.includes('evil'));
    for (const command of [
      ['new-shell', '--', name],
      ['new-shell', 'T-2', `--from=${name}`],
      ['add', 'component', `--shell=${name}`, '--id', 'C-1', '--name', 'x', '--mass', '1 lb', '--at', '0 in, 0 in, 0 in'],
      [
        'add',
        'component',
        '--shell',
        'T-1',
        `--into=${name}`,
        '--id',
        'C-1',
        '--name',
        'x',
        '--mass',
        '1 lb',
        '--at',
        '0 in, 0 in, 0 in',
      ],
      ['add', 'service', '--shell', 'T-1', `--id=${name}`, '--service', 'x', '--medium', 'dc'],
      ['import', 'members', sheet, '--shell', 'T-1', `--into=${name}`],
      ['import', 'members', sheet, `--shell=${name}`],
      ['photos', name, path.dirname(sheet)],
      ['signoff', '--by', 'J2', '--', name, 'floor'],
      ['close', '--no-books', '--', name],
      ['export', '--out', 'tables', '--', 'members', name],
    ]) {
      const { status, messages } = await shellbook(store.root, ...command);
      expect([command.join(' '), status]).toEqual([command.join(' '), 2]);
      expect(messages, command.join(' ')).not.toContain('Unexpected fault');
    }
    expect(everything(store.root)).toBe(before);
    expect(readdirSync(path.dirname(store.root)).filter((one) => one.includes('evil'))).toEqual(beside);
  });

  it('is not followed where the folder of a shell is a link', async () => {
    const theirs = `${store.root}-theirs`;
    mkdirSync(theirs);
    symlinkSync(theirs, path.join(store.root, 'shells', 'T-3'));
    for (const command of [
      ['new-shell', 'T-3'],
      ['add', 'component', '--shell', 'T-3', '--id', 'C-1', '--name', 'x', '--mass', '1 lb', '--at', '0 in, 0 in, 0 in'],
    ])
      expect((await shellbook(store.root, ...command)).status).toBe(2);
    expect(readdirSync(theirs)).toEqual([]);
  });
});

describe('a photo in a book', () => {
  it('unpacks to what a book of its size may and no more, whatever the book says of it', async () => {
    const packed = deflateSync(Buffer.alloc(300e6));
    const raw = (number: number, body: string | Uint8Array, isStream = false): RawObject => ({
      number,
      body: Buffer.from(body as string),
      isStream,
    });
    const name = 'shells/T-1/photos/p1.jpg';
    const pdf = await writePdf(
      [
        packing([
          raw(1, '<</Type /Catalog /Pages 3 0 R /Names <</EmbeddedFiles <</Names [(a) 10 0 R (b) 12 0 R]>>>>>>'),
          raw(2, '<</Title (x)>>'),
          raw(3, '<</Type /Pages /Kids [4 0 R] /Count 1>>'),
          raw(4, '<</Type /Page /Parent 3 0 R /MediaBox [0 0 100 100]>>'),
          raw(10, '<</Type /Filespec /UF (shellbook-manifest.json) /EF <</F 11 0 R>>>>'),
          raw(11, stream('/Type /EmbeddedFile', Buffer.from('{}')), true),
          raw(12, `<</Type /Filespec /UF (${name}) /EF <</F 13 0 R>>>>`),
          raw(13, stream('/Type /EmbeddedFile /Filter /FlateDecode', packed), true),
        ]),
      ],
      { root: 1, info: 2, id: 'ab'.repeat(32) },
    );
    const photo = { path: name, id: 'P-1', bytes: 4e9, sha256: 'ab'.repeat(32), carried: true };
    const book = openBook(pdf);
    expect(() => carriedPhoto(book, photo)).toThrow(/asks for more work than a book of its size does/u);
    expect(book.file.budget.spent).toBeLessThan(2 * book.file.budget.most);
  });
});
