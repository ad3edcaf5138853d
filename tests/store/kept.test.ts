import { mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { CacheDir } from '../../src/store/kept.js';
import { statSnapshot } from '../../src/store/looks.js';
import { keepPageMap, readPageMap } from '../../src/store/page-map.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'shellbook-kept-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('the pages of a book, kept for look-ups', () => {
  const PAGES = new Map([['member-ü', 7]]);
  const read = (fingerprint = 'c2-0a', edition = 'service') => readPageMap(folder, fingerprint, edition);
  const room = () => path.join(folder, 'shellbook/pages');
  const file = (name = 'c20a-service') => path.join(room(), name);

  it('come back as they were, and are nothing for another record or edition', async () => {
    await keepPageMap(folder, 'c2-0a', 'service', PAGES);
    expect([read(), read('c2-0b').size, read('c2-0a', 'owner').size]).toEqual([PAGES, 0, 0]);
  });

  it('are nothing once a single byte is another, the end is gone, or it was kept of another record', async () => {
    await keepPageMap(folder, 'c2-0a', 'service', PAGES);
    const whole = readFileSync(file());
    for (let at = 0; at < whole.length; at += 7) {
      const spoilt = Buffer.from(whole);
      spoilt[at] = (spoilt[at] as number) ^ 1;
      writeFileSync(file(), spoilt);
      expect(read().size, `byte ${at}`).toBe(0);
    }
    for (const odd of [whole.subarray(0, -1), whole.subarray(65), Buffer.alloc(0), Buffer.from('{"member-1": 3}')]) {
      writeFileSync(file(), odd);
      expect(read().size).toBe(0);
    }
    await keepPageMap(folder, 'c2-0b', 'service', new Map([['member-1', 3]]));
    renameSync(file('c20b-service'), file());
    expect(read().size).toBe(0);
    writeFileSync(file(), whole);
    expect(read()).toEqual(PAGES);
  });

  it('are not kept, without a word, where nothing can be written', async () => {
    writeFileSync(path.join(folder, 'shellbook'), 'a file where the folder would be');
    await keepPageMap(folder, 'c2-0a', 'service', PAGES);
    await CacheDir.in(undefined, 'pages').thin(0);
    expect([read().size, readdirSync(folder)]).toEqual([0, ['shellbook']]);
  });
});

describe('how a store looks', () => {
  const lines = () => statSnapshot(folder).lines.map((line) => line.replace(/ .*/u, ''));

  it('counts what is read, in order, and that folders and links are there', () => {
    mkdirSync(path.join(folder, 'shells/T-1/photos'), { recursive: true });
    mkdirSync(path.join(folder, 'out'));
    mkdirSync(path.join(folder, '.git'));
    for (const file of [
      'shop.yaml',
      'notes.txt',
      '.git/x.yaml',
      'out/x.yaml',
      'shells/T-1/b.yaml',
      'shells/T-1/a.txt',
      'shells/T-1/photos/p.jpg',
    ])
      writeFileSync(path.join(folder, file), '');
    symlinkSync('nowhere', path.join(folder, 'shells/T-1/link'));
    expect(lines()).toEqual([
      'shells/',
      'shells/T-1/',
      'shells/T-1/b.yaml',
      'shells/T-1/link',
      'shells/T-1/link',
      'shells/T-1/photos/',
      'shells/T-1/photos/p.jpg',
      'shop.yaml',
    ]);
  });

  it('is another once a link leads elsewhere, and goes round in no circle', () => {
    mkdirSync(path.join(folder, 'library'));
    const [one, two, link] = ['one', 'two', 'stages.yaml'].map((name) => path.join(folder, 'library', name)) as [
      string,
      string,
      string,
    ];
    for (const file of [one, two]) writeFileSync(file, '');
    symlinkSync(one, link);
    const before = statSnapshot(folder).lines;
    rmSync(link);
    symlinkSync(two, link);
    expect(statSnapshot(folder).lines).not.toEqual(before);
    rmSync(link);
    symlinkSync(folder, link);
    expect(lines()).toEqual(['library/', 'library/stages.yaml', 'library/stages.yaml']);
  });
});
