import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../src/assess.js';
import { keepLookup, keptLookup, type TraceQuery, whereAsked } from '../../src/cli/kept-lookup.js';
import { loadStore } from '../../src/model/load.js';
import { ask, lookupOf } from '../../src/query/lookup/index.js';
import { sealed } from '../../src/store/kept.js';
import { keep, keptAt, readKept } from '../../src/store/kept-answers.js';
import { readStoreText } from '../../src/store/read.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';

describe('answers kept for the next time', () => {
  let store: SmallStore;
  let fresh: TraceQuery;
  beforeAll(async () => {
    store = await laySmallStore();
    const one = loadStore(await readStoreText(store.root)).shells.get('T-1');
    if (!one) throw new Error('no shell');
    fresh = {
      lookup: lookupOf(assess(one.model, one.findings)),
      units: 'both',
      services: new Map([['dc', 'House 12 V']]),
      revision: 'abc',
      warning: 'Note: look twice',
      pagesOf: (id) => (id === 'DC-1' ? [12] : []),
    };
  });
  afterAll(() => store.remove());

  /** As it looks a minute after the last change. */
  const place = async (shell = 'T-1') => {
    const found = await keptAt(store.root, whereAsked(shell), Date.now() + 60_000);
    if (!found) throw new Error('not in Git');
    return found;
  };

  it('are the same answers, by name, by place, with slips, and to questions', async () => {
    await keepLookup(await place(), fresh);
    const kept = await keptLookup(await place());
    const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
    for (const query of [
      'DC-1',
      'bay light',
      'dc1s1',
      'bay lihgt',
      'light rear right',
      'fuses',
      'torque',
      'frost',
      'nothing so called',
    ]) {
      expect(plain(ask((kept as TraceQuery).lookup, query)), query).toEqual(plain(ask(fresh.lookup, query)));
    }
    expect(kept).toMatchObject({ units: 'both', revision: 'abc', warning: 'Note: look twice' });
    expect(kept?.services.get('dc')).toBe('House 12 V');
    expect([kept?.pagesOf('DC-1'), kept?.pagesOf('DCP')]).toEqual([[12], []]);
  });

  it('hold no longer once a record has changed, and are another shell’s never', async () => {
    const before = await place();
    await keepLookup(before, fresh);
    const file = path.join(store.root, 'shells/T-1/zones.yaml');
    writeFileSync(file, readFileSync(file));
    const after = await place();
    expect(after.stamp).not.toBe(before.stamp);
    expect(await keptLookup(after)).toBeUndefined();
    expect(await keptLookup(await place('T-2'))).toBeUndefined();
  });

  it('hold no longer after one byte was changed in place and its time set back', async () => {
    const before = await place();
    await keepLookup(before, fresh);
    const file = path.join(store.root, 'shells/T-1/zones.yaml');
    const { size, mtimeMs, atimeMs, ino } = statSync(file);
    utimesSync(file, atimeMs / 1000, Math.floor(mtimeMs / 1000));
    const whole = await place();
    await keepLookup(whole, fresh);
    writeFileSync(file, readFileSync(file, 'utf8').replace('belly', 'bally'));
    utimesSync(file, atimeMs / 1000, Math.floor(mtimeMs / 1000));
    expect(statSync(file)).toMatchObject({ size, ino, mtimeMs: Math.floor(mtimeMs / 1000) * 1000 });
    expect(await keptLookup(await place())).toBeUndefined();
  });

  it('hold no longer after a commit, and are not kept where Git logs none', async () => {
    await keepLookup(await place(), fresh);
    await store.commit('Nothing but what was there');
    execFileSync('git', ['commit', '--quiet', '--allow-empty', '-m', 'Another'], { cwd: store.root });
    expect(await keptLookup(await place())).toBeUndefined();
    const log = path.join(store.root, '.git/logs/HEAD');
    const text = readFileSync(log);
    rmSync(log);
    expect(await keptAt(store.root, whereAsked('T-1'))).toBeUndefined();
    writeFileSync(log, text);
  });

  it('are not kept while a file is so young that its clock might not tell a second change', async () => {
    const file = path.join(store.root, 'shells/T-1/zones.yaml');
    writeFileSync(file, readFileSync(file));
    const young = await keptAt(store.root, whereAsked('T-1'));
    if (!young) throw new Error('not in Git');
    await keepLookup(young, fresh);
    expect(await keptLookup(young)).toBeUndefined();
  });

  it('lie beside Git’s own files, forty at most, and are nothing where they are damaged or there is no Git', async () => {
    const at = await place();
    const folder = path.join(store.root, '.git/shellbook/where');
    await keep(at, { a: 1 }, [
      ['x', { b: 'ü' }],
      ['y', [2]],
    ]);
    const kept = await readKept(at);
    expect([kept?.head, kept?.part('x'), kept?.part('y'), kept?.part('z')]).toEqual([{ a: 1 }, { b: 'ü' }, [2], undefined]);
    const whole = readFileSync(path.join(folder, at.name), 'utf8');
    const cut = [whole.slice(0, -1), whole.replace('[2]', '[3]'), whole.replace('ü', '\0\0'), whole.slice(65)];
    const forged = ['no JSON at all', '', '{}', JSON.stringify({ stamp: at.stamp }), ...['null', '{}', '[]', '"'].map(sealed)];
    for (const damage of [...cut, ...forged]) {
      writeFileSync(path.join(folder, at.name), damage);
      expect(await readKept(at), damage).toBeUndefined();
      expect(await keptLookup(at), damage).toBeUndefined();
    }
    await keep(at, { findables: 7 });
    expect(await keptLookup(at)).toBeUndefined();
    rmSync(folder, { recursive: true });
    mkdirSync(folder);
    for (let i = 0; i < 60; i++) writeFileSync(path.join(folder, `${i}.json`), '');
    for (let i = 0; i < 60; i++) utimesSync(path.join(folder, `${i}.json`), 1000 + i, 1000 + i);
    await keep(at, {}, []);
    expect(readdirSync(folder).sort()).toEqual([...Array.from({ length: 39 }, (_, i) => `${i + 21}.json`), at.name].sort());
    expect(await keptAt(path.parse(store.root).root, whereAsked('T-1'))).toBeUndefined();
  });
});
