import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { gunzipSync, gzipSync } from 'node:zlib';
import sharp from 'sharp';
import { pack } from 'tar-stream';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
beforeAll(async () => {
  const picture = await sharp({ create: { width: 32, height: 24, channels: 3, background: '#446688' } })
    .jpeg()
    .toBuffer();
  store = await laySmallStore({ 'shells/T-1/photos/photos.yaml': '- {id: P-1, file: a.jpg, of: [FL-1], taken: 2026-03-02}\n' });
  store.write('shells/T-1/photos/a.jpg', picture);
  await store.commit('Take in a picture');
  execFileSync('git', ['tag', 'T-1-first'], { cwd: store.root });
  // Kept as it lies there, committed or not.
  store.write(
    'shells/T-1/zones.yaml',
    `${readFileSync(path.join(store.root, 'shells/T-1/zones.yaml'), 'utf8')}# to measure again\n`,
  );
});
afterAll(() => store.remove());

async function shellbook(...args: readonly string[]) {
  const io = literalIo(store.root);
  const status = await runProgram(args, io);
  return { status, answer: io.answer(), messages: io.messages() };
}
const at = (name: string): string => path.join(store.root, 'out', name);
const git = (dir: string, ...args: readonly string[]): string => execFileSync('git', [...args], { cwd: dir, encoding: 'utf8' });

describe('backup', () => {
  it('comes back byte for byte, with its history and the same fingerprint', async () => {
    mkdirSync(at('.'), { recursive: true });
    const written = await shellbook('backup', 'out/shop.tar.gz', '--json');
    expect(written.status, written.messages).toBe(0);
    const { shells, history, uncommitted } = JSON.parse(written.answer);
    expect([history, uncommitted]).toEqual([true, ['shells/T-1/zones.yaml']]);
    const back = await shellbook('recover', 'out/shop.tar.gz', 'out/back', '--json');
    expect(back.status, back.messages).toBe(0);
    expect(JSON.parse(back.answer)).toMatchObject({ shells, damaged: [] });
    for (const file of ['shop.yaml', 'shells/T-1/zones.yaml', 'shells/T-1/photos/a.jpg', 'shells/T-1/services/dc.yaml'])
      expect(readFileSync(path.join(at('back'), file)).equals(readFileSync(path.join(store.root, file))), file).toBe(true);
    expect(git(at('back'), 'log', '--format=%H %s', '--all')).toBe(git(store.root, 'log', '--format=%H %s', '--all'));
    expect(git(at('back'), 'tag')).toBe('T-1-first\n');
    expect(git(at('back'), 'status', '--short')).toBe(' M shells/T-1/zones.yaml\n');
    expect(git(at('back'), 'fsck', '--strict')).toBe('');
  });

  it('is not written over another, and not laid into a folder that has something in it', async () => {
    const before = readFileSync(at('shop.tar.gz'));
    const again = await shellbook('backup', 'out/shop.tar.gz');
    expect([again.status, again.messages]).toEqual([2, expect.stringContaining('is there already')]);
    expect(readFileSync(at('shop.tar.gz')).equals(before)).toBe(true);
    expect((await shellbook('recover', 'out/shop.tar.gz', 'out/back')).status).toBe(2);
  });
});

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');
type Part = { readonly name: string; readonly text?: string; readonly type?: 'symlink' | 'file'; readonly linkname?: string };

/** A backup made by hand, of whatever parts. */
async function made(
  parts: readonly Part[],
  files: readonly { path: string; text: string }[],
  more: object = {},
): Promise<Buffer> {
  const tar = pack();
  const manifest = {
    shellbook_backup: 1,
    program: 'x',
    prefix: '',
    head: null,
    uncommitted: [],
    shells: [],
    history: null,
    files: files.map(({ path: file, text }) => ({ path: file, bytes: Buffer.byteLength(text), sha256: sha256(text) })),
    ...more,
  };
  tar.entry({ name: 'manifest.json' }, JSON.stringify(manifest));
  for (const { text = '', ...head } of parts) tar.entry(head, text);
  tar.finalize();
  const bytes: Buffer[] = [];
  for await (const chunk of tar) bytes.push(chunk as Buffer);
  return gzipSync(Buffer.concat(bytes));
}

const SHOP = 'shop: {name: X}\n';
const shop = { path: 'shop.yaml', text: SHOP };
const of = (file: string, text = SHOP) => ({ path: file, text });

describe('a hostile backup', () => {
  const HOSTILE: readonly (readonly [string, () => Promise<Buffer> | Buffer, RegExp])[] = [
    [
      'a file that leads out',
      () => made([{ name: 'store/../../evil.yaml', text: SHOP }], [of('../../evil.yaml')]),
      /not part of a store/u,
    ],
    [
      'a hook',
      () => made([{ name: 'store/.git/hooks/post-checkout', text: SHOP }], [of('.git/hooks/post-checkout')]),
      /not part of a store/u,
    ],
    ['settings of Git', () => made([{ name: 'store/.git/config', text: SHOP }], [of('.git/config')]), /not part of a store/u],
    ['a folder of Git’s as its place', () => made([], [], { prefix: '.git/' }), /would lie in/u],
    ['a place that leads out', () => made([], [], { prefix: '../x/' }), /would lie in/u],
    [
      'a link',
      () => made([{ name: 'store/shop.yaml', type: 'symlink', linkname: '/etc/passwd' }], [shop]),
      /is a symlink and no file/u,
    ],
    [
      'what the manifest does not name',
      () =>
        made(
          [
            { name: 'store/shop.yaml', text: SHOP },
            { name: 'store/more.yaml', text: 'x' },
          ],
          [shop],
        ),
      /not what its manifest says/u,
    ],
    [
      'more bytes than the manifest says',
      () => made([{ name: 'store/shop.yaml', text: `${SHOP}#` }], [shop]),
      /not what its manifest says/u,
    ],
    ['other bytes', () => made([{ name: 'store/shop.yaml', text: SHOP.replace('X', 'Y') }], [shop]), /is not as it was written/u],
    ['an end too soon', () => made([], [shop]), /ends before `store\/shop\.yaml`/u],
    ['one file twice', () => made([], [shop, of('Shop.yaml')]), /not part of a store|one file twice/u],
    [
      'a history that is none',
      () =>
        made(
          [
            { name: 'history.bundle', text: 'x' },
            { name: 'store/shop.yaml', text: SHOP },
          ],
          [shop],
          { history: { bytes: 1, sha256: sha256('x') }, head: { branch: 'main', commit: 'a'.repeat(40) } },
        ),
      /history in it cannot be read/u,
    ],
    [
      'a branch that is an option',
      () =>
        made(
          [
            { name: 'history.bundle', text: 'x' },
            { name: 'store/shop.yaml', text: SHOP },
          ],
          [shop],
          { history: { bytes: 1, sha256: sha256('x') }, head: { branch: '--exec=sh', commit: 'a'.repeat(40) } },
        ),
      /history in it cannot be read/u,
    ],
    ['a manifest of another program', () => gzipSync(Buffer.alloc(2048)), /nothing in it|damaged/u],
    ['half of one', () => readFileSync(at('shop.tar.gz')).subarray(0, 2000), /damaged/u],
    ['no tar', () => gzipSync('x'.repeat(5000)), /damaged/u],
  ];

  it('is refused with one message, and leaves nothing', async () => {
    const before = readdirSync(at('.')).sort();
    for (const [what, bytes, message] of HOSTILE) {
      const file = at('hostile.gz');
      writeFileSync(file, await bytes());
      const { status, messages } = await shellbook('recover', 'out/hostile.gz', 'out/evil');
      expect([status, messages], what).toEqual([2, expect.stringMatching(message)]);
      expect(
        messages
          .trim()
          .split('\n')
          .filter((line) => line.startsWith('shellbook:')),
        what,
      ).toHaveLength(1);
      expect(existsSync(at('evil')), what).toBe(false);
    }
    expect(readdirSync(at('.')).sort()).toEqual([...before, 'hostile.gz'].sort());
  });

  it('with one bit turned is refused', async () => {
    const whole = gunzipSync(readFileSync(at('shop.tar.gz')));
    const turned = Buffer.from(whole);
    const place = turned.indexOf('House 12 V');
    turned[place] = (turned[place] as number) ^ 1;
    writeFileSync(at('turned.gz'), gzipSync(turned));
    expect((await shellbook('recover', 'out/turned.gz', 'out/evil')).messages).toContain('is not as it was written');
  });
});
