import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { assess } from '../../src/assess.js';
import { keepLookup, keptLookup, type Sought } from '../../src/cli/kept-lookup.js';
import { ask, lookupOf } from '../../src/compute/lookup/index.js';
import { loadStore } from '../../src/model/load.js';
import { keep, keptAt, readKept } from '../../src/store/kept-answers.js';
import { readStoreText } from '../../src/store/read.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';

const PROGRAM = fileURLToPath(import.meta.url);

describe('answers kept for the next time', () => {
  let store: SmallStore;
  let fresh: Sought;
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

  const place = async () => {
    const found = await keptAt(store.root, 'T-1', PROGRAM);
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
      expect(plain(ask((kept as Sought).lookup, query)), query).toEqual(plain(ask(fresh.lookup, query)));
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
    expect((await keptAt(store.root, 'T-2', PROGRAM))?.file).not.toBe(after.file);
  });

  it('lie beside Git’s own files, and are nothing where they are damaged or there is no Git', async () => {
    const at = await place();
    expect(at.file.startsWith(path.join(store.root, '.git', 'shellbook'))).toBe(true);
    await keep(at, { a: 1 }, [
      ['x', { b: 'ü' }],
      ['y', [2]],
    ]);
    const kept = await readKept(at);
    expect([kept?.head, kept?.part('x'), kept?.part('y'), kept?.part('z')]).toEqual([{ a: 1 }, { b: 'ü' }, [2], undefined]);
    writeFileSync(at.file, 'no JSON at all');
    expect(await readKept(at)).toBeUndefined();
    expect(await keptAt(path.parse(store.root).root, 'T-1', PROGRAM)).toBeUndefined();
  });
});
