import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cacheKey } from '../../src/store/cache-key.js';
import { keptAt } from '../../src/store/kept-answers.js';
import { sealed } from '../../src/store/sealed.js';
import { Sections } from '../../src/store/sections.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';

const asked = (question: string) => ({ room: 'figures', question, program: [], inGit: ['refs/tags'], standing: true });

describe('what is kept of one state of the records', () => {
  let store: SmallStore;
  beforeAll(async () => {
    store = await laySmallStore();
  });
  afterAll(() => store.remove());

  /** As it looks a minute after the last change. */
  const place = async (shell = 'T-1') => {
    const found = await keptAt(store.root, asked(shell), Date.now() + 60_000);
    if (!found) throw new Error('not in Git');
    return found;
  };
  const open = async (shell?: string) => Sections.open(await place(shell));
  const folder = () => path.join(store.root, '.git/shellbook/figures');
  async function put(value: unknown = { a: 1 }, name = 'figure x'): Promise<void> {
    const kept = await open();
    kept.put(name, value);
    await kept.save();
  }
  const got = async (name = 'figure x') => (await open()).get(name);

  it('comes back with its maps, sets, days and shared objects, without what only works while the program runs', async () => {
    const panel = { id: 'AP-1', source: { file: 'panels.yaml', place: () => ({}) } };
    const value = { panel, same: panel, by: new Map([['AP-1', panel]]), ids: new Set(['a']), none: undefined, make: () => 1 };
    await put(value);
    const back = (await got()) as typeof value;
    expect(back).toEqual({
      panel: { id: 'AP-1' },
      same: { id: 'AP-1' },
      by: new Map([['AP-1', { id: 'AP-1' }]]),
      ids: new Set(['a']),
    });
    expect(back.same).toBe(back.panel);
    expect(back.by.get('AP-1')).toBe(back.panel);
  });

  it('grows by what comes later, and each name is read alone', async () => {
    await put([1], 'figure one');
    await put([2], 'figure two');
    const kept = await open();
    expect([kept.has('figure one'), kept.get('figure one'), kept.get('figure two'), kept.get('figure three')]).toEqual([
      true,
      [1],
      [2],
      undefined,
    ]);
    expect(kept.get('figure one')).toBe(kept.get('figure one'));
    expect([kept.get('constructor'), kept.has('__proto__')]).toEqual([undefined, false]);
  });

  it('holds no longer once a record has changed, a tag was set, or after a commit; and is another shell’s never', async () => {
    await put();
    expect(await got()).toEqual({ a: 1 });
    expect((await open('T-2')).get('figure x')).toBeUndefined();
    const file = path.join(store.root, 'shells/T-1/zones.yaml');
    writeFileSync(file, readFileSync(file));
    expect(await got()).toBeUndefined();
    await put();
    execFileSync('git', ['tag', 'T-1-closed'], { cwd: store.root });
    expect(await got()).toBeUndefined();
    await put();
    execFileSync('git', ['commit', '--quiet', '--allow-empty', '-m', 'Another'], { cwd: store.root });
    expect(await got()).toBeUndefined();
  });

  it('holds no longer after one byte was changed in place and its time set back', async () => {
    const file = path.join(store.root, 'shells/T-1/zones.yaml');
    const { size, mtimeMs, atimeMs, ino } = statSync(file);
    utimesSync(file, atimeMs / 1000, Math.floor(mtimeMs / 1000));
    await put();
    writeFileSync(file, readFileSync(file, 'utf8').replace('belly', 'bally'));
    utimesSync(file, atimeMs / 1000, Math.floor(mtimeMs / 1000));
    expect(statSync(file)).toMatchObject({ size, ino, mtimeMs: Math.floor(mtimeMs / 1000) * 1000 });
    expect(await got()).toBeUndefined();
  });

  it('is not kept while a file is so young that its clock might not tell a second change, nor where Git logs no commits', async () => {
    const file = path.join(store.root, 'shells/T-1/zones.yaml');
    writeFileSync(file, readFileSync(file));
    const young = await keptAt(store.root, asked('T-1'));
    if (!young) throw new Error('not in Git');
    const kept = await Sections.open(young);
    kept.put('figure x', 1);
    await kept.save();
    expect((await Sections.open(young)).has('figure x')).toBe(false);
    const log = path.join(store.root, '.git/logs/HEAD');
    const text = readFileSync(log);
    rmSync(log);
    expect(await keptAt(store.root, asked('T-1'))).toBeUndefined();
    writeFileSync(log, text);
    expect(await keptAt(path.parse(store.root).root, asked('T-1'))).toBeUndefined();
  });

  it('is nothing where a byte is another, its end is gone, or another user’s key marked it', async () => {
    await put({ word: 'under' });
    const at = await place();
    const file = path.join(folder(), at.name);
    const whole = readFileSync(file);
    const text = whole.toString('latin1');
    const spoilt = [
      text.slice(0, -1),
      text.replace('under', 'undar'),
      text.slice(65),
      text.replace(/^./u, (one) => (one === '0' ? '1' : '0')),
      '',
      '\n',
    ];
    for (const one of spoilt) {
      writeFileSync(file, Buffer.from(one, 'latin1'));
      expect(await got(), one.slice(0, 80)).toBeUndefined();
    }
    for (const one of ['{}', 'null', '[]', JSON.stringify({ stamp: at.stamp, sections: { 'figure x': [0, 9e9, 'x'] } })]) {
      writeFileSync(file, Buffer.concat([sealed(one) as Buffer, Buffer.from('\nabc')]));
      expect(await got(), one).toBeUndefined();
    }
    writeFileSync(file, whole);
    expect(await got()).toEqual({ word: 'under' });
    expect(cacheKey()).toHaveLength(32);
  });

  it('lies beside Git’s own files, forty entries at most', async () => {
    const at = await place();
    rmSync(folder(), { recursive: true });
    mkdirSync(folder());
    for (let i = 0; i < 60; i++) writeFileSync(path.join(folder(), `${i}`), '');
    for (let i = 0; i < 60; i++) utimesSync(path.join(folder(), `${i}`), 1000 + i, 1000 + i);
    await put();
    expect(readdirSync(folder()).sort()).toEqual([...Array.from({ length: 39 }, (_, i) => `${i + 21}`), at.name].sort());
  });
});
