import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { CacheDir, CacheEntries } from '../../src/store/kept.js';
import { statSnapshot } from '../../src/store/looks.js';
import { sealed } from '../../src/store/sealed.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'shellbook-kept-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('an answer kept by a key', () => {
  const isWord = (found: unknown): found is { readonly word: string } =>
    typeof (found as { word?: unknown } | null)?.word === 'string';
  const kept = (gitDir: string | undefined = folder) => new CacheEntries(CacheDir.in(gitDir, 'words'), isWord);
  const file = () => path.join(folder, 'shellbook/words/a.json');

  it('comes back as it was, and is nothing under another key', async () => {
    await kept().put('a', { word: 'über' });
    expect([await kept().get('a'), await kept().get('b')]).toEqual([{ word: 'über' }, undefined]);
  });

  it('is nothing once a single byte of it is another, its end is gone, or it is of another form', async () => {
    await kept().put('a', { word: 'under' });
    const text = readFileSync(file(), 'utf8');
    const spoilt = [text.replace('under', 'undar'), text.slice(0, -1), `${text} `, text.slice(65), '', '\0'.repeat(text.length)];
    for (const one of [...spoilt, ...['null', '7', '[]', '{"word":7}', '{'].map(sealed)]) {
      writeFileSync(file(), one as string | Buffer);
      expect(await kept().get('a'), String(one)).toBeUndefined();
    }
    writeFileSync(file(), text);
    expect(await kept().get('a')).toEqual({ word: 'under' });
  });

  it('is not kept, without a word, where nothing can be written or there is no Git', async () => {
    writeFileSync(path.join(folder, 'shellbook'), 'a file where the folder would be');
    for (const gitDir of [folder, undefined]) {
      await kept(gitDir).put('a', { word: 'lost' });
      await kept(gitDir).thin(0);
      expect(await kept(gitDir).get('a')).toBeUndefined();
    }
    expect(readdirSync(folder)).toEqual(['shellbook']);
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
