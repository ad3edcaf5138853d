import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openPictureCache } from '../../src/store/picture-cache.js';

describe('pictures kept by content', () => {
  const home = mkdtempSync(path.join(tmpdir(), 'shellbook-test-'));
  afterAll(() => rmSync(home, { recursive: true, force: true }));
  const open = (recipe = 'one') => openPictureCache(recipe, { XDG_CACHE_HOME: home });

  it('are made once for a photo and a recipe, also when asked for twice at a time', async () => {
    let made = 0;
    const make = async () => Buffer.from(`made ${++made}`);
    const [photo, other] = [Buffer.from('a'), Buffer.from('b')];
    const cache = await open();
    const both = await Promise.all([cache.picture(photo, make), cache.picture(photo, make)]);
    expect([...both, await (await open()).picture(photo, make)].map((read) => String(read()))).toEqual([
      'made 1',
      'made 1',
      'made 1',
    ]);
    expect(String((await (await open()).picture(other, make))())).toBe('made 2');
    expect(String((await (await open('two')).picture(photo, make))())).toBe('made 3');
  });

  it('are not kept where making them failed', async () => {
    const photo = Buffer.from('c');
    await expect((await open()).picture(photo, () => Promise.reject(new Error('no picture')))).rejects.toThrow('no picture');
    expect(String((await (await open()).picture(photo, async () => Buffer.from('yes')))())).toBe('yes');
  });

  it('are read when they are asked for, and told of when somebody took them away meanwhile', async () => {
    const kept = await (await open()).picture(Buffer.from('d'), async () => Buffer.from('large'));
    expect(kept()).not.toBe(kept());
    rmSync(home, { recursive: true, force: true });
    expect(kept).toThrow(/taken away while the book was printed/u);
  });

  it('are made again where one is damaged, cut off, of another photo, or not marked with this user’s key', async () => {
    const folder = path.join(home, 'shellbook/photos');
    const [photo, other] = [Buffer.from('e'), Buffer.from('f')];
    await (await open()).picture(other, async () => Buffer.from('of another photo'));
    const [foreign] = readdirSync(folder) as [string];
    await (await open()).picture(photo, async () => Buffer.from('right'));
    const file = path.join(folder, readdirSync(folder).find((name) => name !== foreign) as string);
    const whole = readFileSync(file);
    const flipped = Buffer.from(whole);
    flipped[flipped.length - 1] = 0x20;
    const spoilt = [
      flipped,
      whole.subarray(0, -1),
      whole.subarray(65),
      readFileSync(path.join(folder, foreign)),
      Buffer.alloc(0),
    ];
    for (const bytes of spoilt) {
      writeFileSync(file, bytes);
      expect(String((await (await open()).picture(photo, async () => Buffer.from('again')))())).toBe('again');
    }
    writeFileSync(file, whole);
    expect(String((await (await open()).picture(photo, async () => Buffer.from('again')))())).toBe('right');
  });
});
