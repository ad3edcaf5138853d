/** What makes files of its own is one step that can be done again: killed, with a full disk, or with a link in its way. */
import { spawn, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { layDown } from '../../src/store/lay-down.js';
import { ownName } from '../../src/store/own/owner.js';
import { writeOut } from '../../src/store/write-out.js';
import { shellbook } from '../cli/printed-book.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';

const MAIN = fileURLToPath(new URL('../../dist/main.js', import.meta.url));
const PICTURES = 16;
/** Kills of each command: more by hand. */
const KILLS = Math.min(Number(process.env.SHELLBOOK_FUZZ ?? 2), 300);

let store: SmallStore;
let away: string;
beforeEach(async () => {
  store = await laySmallStore();
  away = mkdtempSync(path.join(tmpdir(), 'shellbook-away-'));
});
afterEach(() => {
  store.remove();
  rmSync(away, { recursive: true, force: true });
});

const inStore = (name: string): string => path.join(store.root, name);
const names = (folder: string): readonly string[] => (existsSync(inStore(folder)) ? readdirSync(inStore(folder)).sort() : []);
const pictures = (): readonly string[] => names('shells/T-1/photos').filter((name) => name.endsWith('.png'));
const recorded = (): number => {
  const file = inStore('shells/T-1/photos/photos.yaml');
  return existsSync(file) ? (readFileSync(file, 'utf8').match(/- \{id: P-/gu) ?? []).length : 0;
};

async function phone(): Promise<string> {
  const folder = path.join(away, 'phone');
  mkdirSync(folder);
  for (let i = 0; i < PICTURES; i++) {
    const one = sharp({ create: { width: 60, height: 40, channels: 3, background: { r: i, g: 90, b: 200 - i } } }).png();
    writeFileSync(path.join(folder, `IMG_${String(i).padStart(3, '0')}.png`), await one.toBuffer());
  }
  return folder;
}

/** Runs the built program and kills it outright once `when` holds. */
async function killed(args: readonly string[], when: () => boolean): Promise<void> {
  const child = spawn(process.execPath, [MAIN, ...args], { cwd: store.root, stdio: 'ignore' });
  const ended = new Promise((done) => child.on('close', done));
  while (child.exitCode === null && !when()) await new Promise((done) => setTimeout(done, 1));
  child.kill('SIGKILL');
  await ended;
}

describe('photos', () => {
  it('broken off at any picture, leaves none without a record for good', async () => {
    const folder = await phone();
    for (let i = 0; i < KILLS; i++) {
      const from = pictures().length;
      await killed(['photos', 'T-1', folder], () => pictures().length > from + 4 || recorded() > 0);
    }
    const { answer } = await shellbook(store.root, 'check', 'T-1', '--json');
    const found = (JSON.parse(answer) as { findings: { rule: string; file: string }[] }).findings;
    const lost = found.filter(({ rule }) => rule === 'record.photo-unrecorded').map(({ file }) => path.basename(file));
    expect(lost.length + recorded()).toBe(pictures().length);
    expect((await shellbook(store.root, 'photos', 'T-1', folder)).status).toBe(0);
    expect([pictures().length, recorded()]).toEqual([PICTURES, PICTURES]);
    expect(names('shells/T-1/photos').filter((name) => name.endsWith('.new'))).toEqual([]);
    expect((await shellbook(store.root, 'photos', 'T-1', folder)).answer).toContain('Took in 0 pictures');
  });

  it('takes up pictures that lie in the store without a record', async () => {
    await phone();
    mkdirSync(inStore('shells/T-1/photos'));
    writeFileSync(inStore('shells/T-1/photos/a.png'), readFileSync(path.join(away, 'phone/IMG_001.png')));
    const { status } = await shellbook(store.root, 'photos', 'T-1', inStore('shells/T-1/photos'));
    expect([status, pictures(), recorded()]).toEqual([0, ['a.png'], 1]);
  });
});

describe('new-shell', () => {
  it('killed at any moment, leaves a whole shell or none', async () => {
    for (let i = 0; i < KILLS; i++) {
      const name = `Q-${i}`;
      await killed(['new-shell', name], () => names('shells').some((one) => one.includes(name)));
      const whole = existsSync(inStore(`shells/${name}`));
      const again = await shellbook(store.root, 'new-shell', name);
      expect(again.status, again.messages).toBe(whole ? 2 : 0);
      expect(names(`shells/${name}`)).toContain('shell.yaml');
      expect(names('shells').filter((one) => one.startsWith('.'))).toEqual([]);
    }
  });

  it('is not led out of the store by a link in the place of shells/', async () => {
    rmSync(inStore('shells'), { recursive: true });
    symlinkSync(away, inStore('shells'));
    const { status, messages } = await shellbook(store.root, 'new-shell', 'Q-1');
    expect([status, readdirSync(away)]).toEqual([2, []]);
    expect(messages).toContain('leads out of the store');
  });
});

describe('what is written of the records', () => {
  it.each(['books', 'out', 'deep/within'])('is not led out of the store by a link: %s', async (folder) => {
    const linked = inStore(folder.split('/')[0] as string);
    symlinkSync(away, linked);
    for (const file of [path.join(store.root, folder, 'T-1-owner.pdf'), path.join(store.root, folder, '../books/x.pdf')])
      if (file.startsWith(linked)) await expect(writeOut(store.root, file, 'pdf')).rejects.toThrow('leads out of the store');
    const { status } = await shellbook(store.root, 'export', 'all', 'T-1', '--out', folder);
    expect([status, readdirSync(away), readlinkSync(linked)]).toEqual([2, [], away]);
  });

  it('replaces a link in the place of the file, and not what it leads to', async () => {
    const secret = path.join(away, 'secret');
    writeFileSync(secret, 'mine');
    symlinkSync(secret, path.join(away, 'owner.pdf'));
    await writeOut(store.root, path.join(away, 'owner.pdf'), 'pdf');
    expect([readFileSync(secret, 'utf8'), readFileSync(path.join(away, 'owner.pdf'), 'utf8')]).toEqual(['mine', 'pdf']);
    mkdirSync(inStore('books'));
    symlinkSync(secret, inStore('books/T-1-owner.pdf'));
    await expect(writeOut(store.root, inStore('books/T-1-owner.pdf'), 'pdf')).rejects.toThrow('leads out of the store');
    expect(readFileSync(secret, 'utf8')).toBe('mine');
  });

  it('takes away halves that killed runs left, and those of no other', async () => {
    const dead = ownName().replace(/\d+$/u, '1');
    const alive = ownName();
    mkdirSync(inStore('books'));
    for (const owner of [dead, alive]) writeFileSync(inStore(`books/.T-1-owner.pdf.${owner}-0123abcd.new`), 'half');
    await writeOut(store.root, inStore('books/T-1-owner.pdf'), 'pdf');
    expect(names('books')).toEqual([`.T-1-owner.pdf.${alive}-0123abcd.new`, 'T-1-owner.pdf']);
  });

  it('is whole or as it was where the disk takes no more', () => {
    const table = inStore('table.csv');
    writeFileSync(table, 'before');
    const limited = `ulimit -f 1; exec "${process.execPath}" "${MAIN}" export all T-1 --out .`;
    const { status, stderr } = spawnSync('bash', ['-c', limited], { cwd: store.root, encoding: 'utf8', timeout: 30_000 });
    // The limit is of whole blocks: what fits into one is there and whole, what does not is not there.
    expect(status === 0 || stderr.includes('cannot be written')).toBe(true);
    expect(readdirSync(store.root).filter((name) => name.endsWith('.new'))).toEqual([]);
    expect(readFileSync(table, 'utf8')).toBe('before');
  });
});

describe('recover', () => {
  it('sweeps away what a killed one left, and lays the whole down', async () => {
    const dead = ownName().replace(/\d+$/u, '1');
    const half = path.join(away, `.records.${dead}-0123abcd.new`);
    mkdirSync(half);
    writeFileSync(path.join(half, 'shop.yaml'), 'half');
    await layDown(path.join(away, 'records'), [{ path: 'shop.yaml', bytes: Buffer.from('whole') }]);
    expect(readdirSync(away)).toEqual(['records']);
  });
});
