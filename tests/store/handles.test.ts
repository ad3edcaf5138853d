import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CacheDir } from '../../src/store/kept.js';
import { openPicture } from '../../src/store/picture.js';
import { shellbook } from '../cli/printed-book.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';

let store: SmallStore;
let away: string;
const said: string[] = [];
const listen = (warning: Error): void => void said.push(warning.message);
beforeAll(async () => {
  store = await laySmallStore();
  away = mkdtempSync(path.join(tmpdir(), 'shellbook-handles-'));
  process.on('warning', listen);
});
afterAll(() => {
  process.off('warning', listen);
  store.remove();
  rmSync(away, { recursive: true, force: true });
});

/** Takes away what nobody holds: Node warns of a file that was left open, and closes it. */
async function collect(): Promise<void> {
  setFlagsFromString('--expose-gc');
  const gc = runInNewContext('gc') as () => void;
  for (let i = 0; i < 3; i++) {
    gc();
    await wait(1);
  }
}

describe('every file that is opened is closed', () => {
  it.each([
    'check T-1',
    'list',
    'history T-1',
    'where T-1 DC-1',
    'trace heat none',
    'compare T-1 HEAD',
    'add component --shell T-1 --id CMP-9 --name hook --mass 1lb --at 100in,0in,60in --basis weighed',
    'import members shop.yaml --shell T-1 --yes',
    'verify shop.yaml',
  ])('by %s', async (line) => {
    await shellbook(store.root, ...line.split(' '));
    await collect();
    expect(said).toEqual([]);
  });

  it('where a picture is none, and where what is kept cannot be written', async () => {
    const file = path.join(away, 'no-picture.jpg');
    writeFileSync(file, 'no picture');
    for (const one of [file, away]) await expect(openPicture(one)).rejects.toThrow();
    const room = CacheDir.in(file, 'here');
    await room.write('name', Buffer.from('text'));
    expect(room.read('name')).toBeUndefined();
    await collect();
    expect(said).toEqual([]);
  });
});
