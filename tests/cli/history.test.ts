import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { simpleGit } from 'simple-git';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findStore } from '../../src/store/find.js';
import { History } from '../../src/store/history.js';

let top: string;
let store: string;

beforeAll(async () => {
  top = mkdtempSync(path.join(tmpdir(), 'shellbook-history-'));
  store = path.join(top, 'the store');
  const git = simpleGit({ baseDir: top });
  await git.init();
  await git.addConfig('user.name', 'K. Marrow').addConfig('user.email', 'k@example.org');
  const commit = async (file: string, subject: string): Promise<void> => {
    mkdirSync(path.dirname(path.join(store, file)), { recursive: true });
    writeFileSync(path.join(store, file), `# ${subject}\n`);
    await git.add('.').commit(subject);
  };
  await commit('shop.yaml', 'Start');
  await commit('shells/A-1/shell.yaml', 'First shell');
  await git.addTag('A-1-closed');
  await commit('shells/B*/shell.yaml', 'Second shell');
});
afterAll(() => rmSync(top, { recursive: true, force: true }));

describe('History', () => {
  const open = async (): Promise<History> => (await History.open(store)) as History;

  it('gives the commits that touch a shell or what it stands on, newest first', async () => {
    const commits = await (await open()).commits('A-1');
    expect(commits.map((one) => one.subject)).toEqual(['First shell', 'Start']);
    expect(commits[0]).toMatchObject({ author: 'K. Marrow', tags: ['A-1-closed'] });
    expect(commits[0]?.commit).toMatch(/^[0-9a-f]{40}$/u);
    expect(commits[0]?.date).toMatch(/^\d{4}-\d\d-\d\dT/u);
  });

  it('takes a folder name as it is, never as a pattern or an option', async () => {
    const history = await open();
    expect((await history.commits('B*')).map((one) => one.subject)).toEqual(['Second shell', 'Start']);
    expect((await history.commits('*')).map((one) => one.subject)).toEqual(['Start']);
    expect((await history.commits('--all')).map((one) => one.subject)).toEqual(['Start']);
  });

  it('tells what is not committed, by its path in the store', async () => {
    writeFileSync(path.join(store, 'shells/A-1/welds x.yaml'), '');
    writeFileSync(path.join(store, 'shop.yaml'), 'changed');
    const { last, uncommitted } = await (await open()).standing('A-1');
    expect(last?.subject).toBe('First shell');
    expect(uncommitted).toEqual(['shells/A-1/welds x.yaml', 'shop.yaml']);
    expect((await (await open()).standing('B*')).uncommitted).toEqual(['shop.yaml']);
  });

  it('is null outside Git, and empty before the first commit', async () => {
    const bare = mkdtempSync(path.join(tmpdir(), 'shellbook-bare-'));
    try {
      expect(await History.open(bare)).toBeNull();
      await simpleGit({ baseDir: bare }).init();
      const history = (await History.open(bare)) as History;
      expect(await history.commits()).toEqual([]);
      expect((await history.standing()).last).toBeNull();
    } finally {
      rmSync(bare, { recursive: true, force: true });
    }
  });
});

describe('findStore', () => {
  it('finds the nearest upward, and records/ where there is none', () => {
    expect(findStore(path.join(store, 'shells', 'A-1'))).toBe(store);
    mkdirSync(path.join(top, 'records'));
    writeFileSync(path.join(top, 'records', 'shop.yaml'), '');
    expect(findStore(top)).toBe(path.join(top, 'records'));
  });

  it('says which folder is no store', () => {
    expect(() => findStore(top, 'nowhere')).toThrow(/No store at nowhere: there is no such folder/u);
    expect(() => findStore(top, 'the store/shells')).toThrow(/it has no shop\.yaml/u);
  });
});
