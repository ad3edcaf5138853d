import { mkdirSync, mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { loadStore } from '../../src/model/load.js';
import { hashPhotos } from '../../src/store/hash-photos.js';
import { roleOf } from '../../src/store/layout.js';
import { readStoreText } from '../../src/store/read.js';
import { UserError } from '../../src/user-error.js';

let top: string;
let root: string;

beforeAll(() => {
  top = mkdtempSync(path.join(tmpdir(), 'store-'));
  root = path.join(top, 'store');
  mkdirSync(path.join(root, 'shells/T-1/photos'), { recursive: true });
  mkdirSync(path.join(root, 'library'));
  mkdirSync(path.join(root, 'out'));
  const put = (file: string, bytes: string | Uint8Array) => writeFileSync(path.join(root, file), bytes);
  put('shop.yaml', '\uFEFFshop: {name: S}\r\nunits: us\r\n');
  put('out/other.yaml', 'x: 1');
  put('shells/T-1/shell.yaml', 'shell: T-1\n');
  put('shells/T-1/notes.txt', 'not read');
  put('shells/T-1/photos/P-1.jpg', 'abc');
  put('shells/T-1/welds.yaml', Uint8Array.from([0x2d, 0x20, 0xff, 0xfe]));
  put('shells/T-1/panels.yaml', '');
  truncateSync(path.join(root, 'shells/T-1/panels.yaml'), 21 * 1024 * 1024);
  writeFileSync(path.join(top, 'secret.yaml'), 'secret: 1');
  symlinkSync('../../../secret.yaml', path.join(root, 'shells/T-1/members.yaml'));
  symlinkSync('../../..', path.join(root, 'shells/T-1/services'));
  symlinkSync('shell.yaml', path.join(root, 'shells/T-1/zones.yaml'));
  symlinkSync('nowhere', path.join(root, 'shells/T-1/tests.yaml'));
});
afterAll(() => rmSync(top, { recursive: true, force: true }));

describe('reading a store from its folder', () => {
  test('YAML of the store only, nothing through a link that leads out', async () => {
    const text = await readStoreText(root);
    expect([...text.files.keys()]).toEqual(['shells/T-1/shell.yaml', 'shells/T-1/zones.yaml', 'shop.yaml']);
    expect(text.files.get('shop.yaml')).toBe('shop: {name: S}\r\nunits: us\r\n');
    expect([...text.photos]).toEqual([['shells/T-1/photos/P-1.jpg', 3]]);
  });

  test('what is not read is told, each with its reason', async () => {
    const { refused } = await readStoreText(root);
    expect(Object.fromEntries(refused ?? [])).toEqual({
      'shells/T-1/members.yaml': expect.stringContaining('leads out of the store'),
      'shells/T-1/services': expect.stringContaining('leads out of the store'),
      'shells/T-1/tests.yaml': expect.stringContaining('link to nowhere'),
      'shells/T-1/welds.yaml': expect.stringContaining('not UTF-8'),
      'shells/T-1/panels.yaml': expect.stringContaining('21 MB'),
    });
    const { shells } = loadStore(await readStoreText(root));
    const rules = shells.get('T-1')?.findings.filter((one) => one.rule === 'format.unreadable');
    expect(rules).toHaveLength(5);
  });

  test('pictures are hashed by content', async () => {
    // HSH-02: FIPS 180-4, the hash of `abc`
    expect([...(await hashPhotos(await readStoreText(root), 'T-1'))]).toEqual([
      ['shells/T-1/photos/P-1.jpg', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    ]);
  });

  test('a folder that is not there cannot be read', async () => {
    await expect(readStoreText(path.join(top, 'none'))).rejects.toThrow(UserError);
  });
});

describe('file names', () => {
  test.each([
    ['shop.yaml', 'shop'],
    ['library/materials.yaml', 'library'],
    ['library/rules/us-federal.yaml', 'library'],
    ['shells/T-1/shell.yaml', 'shell'],
    ['shells/T-1/members-floor.yaml', 'list'],
    ['shells/T-1/members2.yaml', 'list'],
    ['shells/T-1/services/dc-house.yaml', 'service'],
    ['shells/T-1/photos/photos.yaml', 'list'],
    ['shells/T-1/membersfloor.yaml', 'unknown'],
    ['shells/T-1/photos.yaml', 'unknown'],
    ['shells/T-1/services/deep/dc.yaml', 'unknown'],
    ['shells/stray.yaml', 'unknown'],
    ['other.yaml', 'unknown'],
  ])('%s holds %s', (file, holds) => expect(roleOf(file).holds).toBe(holds));

  test('the nearest known name is offered', () => {
    const message = (file: string) => (roleOf(file) as { message?: string }).message;
    expect(message('shells/T-1/member.yaml')).toContain('expected `shells/T-1/members.yaml`');
    expect(message('library/stages.yml')).toContain('expected `library/stages.yaml`');
    expect(message('shells/T-1/photos.yaml')).toContain('photos/photos.yaml');
  });
});
