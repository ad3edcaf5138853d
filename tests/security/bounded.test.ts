/** Nothing that is named at the prompt or lies in a store holds the program for ever, or fills its memory. */
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { closeSync, mkdirSync, mkdtempSync, openSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSheet } from '../../src/entry/sheet.js';
import { shellbook } from '../cli/printed-book.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';
import { updateFile } from '../store/update-file.js';

const MAIN = fileURLToPath(new URL('../../dist/main.js', import.meta.url));
const LINUX = process.platform === 'linux';

let store: SmallStore;
let away: string;
beforeAll(async () => {
  store = await laySmallStore();
  away = mkdtempSync(path.join(tmpdir(), 'shellbook-bounded-'));
});
afterAll(() => {
  store.remove();
  rmSync(away, { recursive: true, force: true });
});
const pipe = (file: string): string => {
  execFileSync('mkfifo', [file]);
  return file;
};

describe('a file that has no end', () => {
  const endless = (): readonly string[] => [
    pipe(path.join(away, `pipe-${Math.random()}`)),
    ...(LINUX ? ['/dev/zero', '/dev/urandom', '/dev/tty', '/proc/kmsg'] : []),
    away,
    path.join(away, 'none'),
  ];

  it.each([['import', 'members', '--shell', 'T-1', '--yes'], ['verify'], ['check', '--book'], ['where', 'T-1', 'DC', '--book']])(
    'is not waited for: %s',
    async (...command) => {
      for (const file of endless()) {
        const { status, messages } = await shellbook(store.root, ...command, file);
        expect([file, status]).toEqual([file, 2]);
        expect(messages).not.toContain('Unexpected fault');
        expect(messages.trim().split('\n').length).toBeLessThan(4);
      }
    },
  );

  it('is passed over among pictures', async () => {
    const folder = path.join(away, 'phone');
    mkdirSync(folder);
    pipe(path.join(folder, 'a.jpg'));
    symlinkSync('/dev/zero', path.join(folder, 'b.jpg'));
    expect((await shellbook(store.root, 'photos', 'T-1', folder)).answer).toContain('Took in 0 pictures');
  });

  it.each([
    'shells/T-1/welds-x.yaml',
    'library/people.yaml',
    'shells/T-1/photos/x.jpg',
    'shells/T-1/services/x.yaml',
    'import.yaml',
  ])('is named in a store, and not read: %s', async (file) => {
    const place = path.join(store.root, file);
    mkdirSync(path.dirname(place), { recursive: true });
    pipe(place);
    const { answer } = await shellbook(store.root, 'check', '--json');
    rmSync(place);
    expect(answer).toContain('This is a pipe, a socket or a device and no file');
  });

  it('is named where it is a socket, a link to a device, or a folder called like a file', async () => {
    const folder = path.join(store.root, 'shells/T-1');
    const server = createServer();
    await new Promise<void>((done) => server.listen(path.join(folder, 'tests-s.yaml'), done));
    mkdirSync(path.join(folder, 'welds-f.yaml'));
    symlinkSync('/dev/zero', path.join(folder, 'clamps-l.yaml'));
    const { answer } = await shellbook(store.root, 'check', 'T-1', '--json');
    await new Promise((done) => server.close(done));
    for (const name of ['welds-f.yaml', 'clamps-l.yaml']) rmSync(path.join(folder, name), { recursive: true });
    const found = (JSON.parse(answer) as { findings: { file: string; message: string }[] }).findings;
    const said = (name: string): string => found.find(({ file }) => file.endsWith(name))?.message ?? '';
    expect(said('tests-s.yaml')).toContain('no file');
    expect(said('welds-f.yaml')).toContain('a folder with the name of a record file');
    expect(said('clamps-l.yaml')).toContain('leads out of the store');
  });
});

describe('a sheet', () => {
  it.each([
    ['a million columns', 'a,'.repeat(1e6)],
    ['a million columns in its second row', `id,section\n${','.repeat(1e6)}`],
    ['a million columns by semicolons', `a;b\n${';'.repeat(1e6)}`],
    ['a quotation that never ends', `id,section\n"${'x'.repeat(5e6)}`],
    ['a million quotation marks', `id,section\n${'"'.repeat(999_999)}`],
    ['nothing but line ends', '\n'.repeat(5e6)],
  ])('of %s is refused in one sentence', (_what, text) => {
    expect(() => readSheet('sheet.csv', Buffer.from(text))).toThrow(/sheet\.csv/u);
  });
});

describe('a record file', () => {
  it('is never written so large that the next check would not read it', async () => {
    const half = `- {id: X, note: ${'n'.repeat(11 * 1024 * 1024)}}\n`;
    await updateFile(store.root, 'shells/T-1/amendments.yaml', () => half);
    await expect(updateFile(store.root, 'shells/T-1/amendments.yaml', (old) => `${old}${half}`)).rejects.toThrow(
      /too large to be read again: nothing was written.*--into amendments-2/u,
    );
    expect(readFileSync(path.join(store.root, 'shells/T-1/amendments.yaml'), 'utf8')).toBe(half);
    rmSync(path.join(store.root, 'shells/T-1/amendments.yaml'));
  });
});

describe('a picture', () => {
  it.each(['9999:99:99 99:99:99', '2026:02:31 10:00:00', '1899:12:31 23:59:59'])(
    'whose date is none is named, and the others are taken in: %s',
    async (when) => {
      const folder = mkdtempSync(path.join(away, 'dated-'));
      const plain = (r: number) =>
        sharp({
          create: {
            width: 30,
            height: 20,
            channels: 3,
            background: { r, g: Number(when.slice(5, 7)), b: Number(when.slice(2, 4)) },
          },
        });
      writeFileSync(
        path.join(folder, 'a.jpg'),
        await plain(1)
          .jpeg()
          .withExif({ IFD2: { DateTimeOriginal: when } })
          .toBuffer(),
      );
      writeFileSync(path.join(folder, 'b.jpg'), await plain(2).jpeg().toBuffer());
      const { status, answer } = await shellbook(store.root, 'photos', 'T-1', folder);
      expect(status).toBe(0);
      expect(answer.replace(/\s+/gu, ' ')).toContain(`Without its date: a.jpg: the camera wrote \`${when}\`, which is no day.`);
      expect(answer).toContain('Took in 2 pictures');
    },
  );
});

describe.runIf(LINUX)('an answer that cannot be written', () => {
  it.each([['check', 'T-1'], ['history', 'T-1', '--json'], ['export', 'members', 'T-1'], ['--help']])(
    'ends with 2: %s',
    (...args) => {
      const full = openSync('/dev/full', 'w');
      const { status, stderr } = spawnSync(process.execPath, [MAIN, ...args], {
        cwd: store.root,
        stdio: ['ignore', full, 'pipe'],
        encoding: 'utf8',
      });
      closeSync(full);
      expect([status, stderr.trim().split('\n').at(-1)]).toEqual([
        2,
        'shellbook: The answer could not be written: the disk is full.',
      ]);
    },
  );

  it('is no fault where its reader has gone', async () => {
    const child = spawn(process.execPath, [MAIN, 'check', 'T-1', '--all'], {
      cwd: store.root,
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    child.stdout.destroy();
    let said = '';
    child.stderr.on('data', (piece) => {
      said += String(piece);
    });
    await new Promise((done) => child.on('close', done));
    expect(said).not.toContain('fault');
  });
});
