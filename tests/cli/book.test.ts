import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
beforeAll(async () => {
  store = await laySmallStore({ '.gitignore': 'books/\n' });
});
afterAll(() => store.remove());

async function shellbook(...args: readonly string[]) {
  const io = literalIo(store.root);
  const status = await runProgram(args, io);
  return { status, answer: io.answer(), messages: io.messages() };
}

async function inJson(...args: readonly string[]) {
  const { status, answer } = await shellbook(...args, '--json', '--quiet');
  return { status, json: JSON.parse(answer) };
}

describe('book', () => {
  it('prints the three editions into the store, and leaves nothing else behind', async () => {
    const { status, answer } = await shellbook('book', 'T-1', '--json');
    expect(status).toBe(0);
    const { books, revision } = JSON.parse(answer);
    expect(revision).toMatch(/^[0-9a-f]{40}$/u);
    expect(books.map((one: { edition: string }) => one.edition)).toEqual(['owner', 'service', 'shop']);
    expect(readdirSync(path.join(store.root, 'books')).sort()).toEqual(['T-1-owner.pdf', 'T-1-service.pdf', 'T-1-shop.pdf']);
    for (const { file, pages } of books) {
      expect(readFileSync(path.join(store.root, file)).subarray(0, 5).toString()).toBe('%PDF-');
      expect(pages).toBeGreaterThan(5);
    }
  });

  it('gives labels the pages of the edition that was printed of this record, and none otherwise', async () => {
    const { status, answer, messages } = await shellbook('labels', 'T-1', '--json', '--quiet', '--markers');
    expect([status, messages]).toEqual([0, '']);
    const told = JSON.parse(answer);
    expect(told).toMatchObject({
      shellbook: 1,
      command: 'labels',
      shell: 'T-1',
      edition: 'service',
      markers: expect.any(Number),
      warnings: [],
    });
    // One for either end of every run.
    expect([told.markers > 0, told.markers % 2]).toEqual([true, 0]);
    expect(told.labels).toEqual([
      {
        panel: 'AP-1',
        name: expect.any(String),
        page: expect.any(Number),
        code: `T-1 AP-1 p.${told.labels[0].page}`,
        // Its lamp wire is behind a fuse: nothing there hurts a hand.
        hazards: [],
      },
    ]);
    expect(readFileSync(path.join(store.root, told.file)).subarray(0, 5).toString()).toBe('%PDF-');
    expect(await shellbook('labels', 'T-1', '--first', '11')).toMatchObject({
      status: 2,
      messages: expect.stringContaining('a whole number from 1 to 10'),
    });
  });

  it('prints what changed since a revision, and the page that each replaces', async () => {
    const { json: before } = await inJson('history', 'T-1');
    const since = before.commits[0].commit as string;
    expect(await shellbook('book', 'T-1', '--edition', 'owner', '--since', since)).toMatchObject({
      status: 0,
      answer: expect.stringContaining('no page changed'),
    });
    store.write(
      'shells/T-1/declared.yaml',
      '- {id: LP-1, kind: lift, at: [60 in, 0 in, 0 in], rating: 20 kN, by: A. Engineer, document: sheet 4}\n',
    );
    await store.commit('Declare a lifting point');
    const { status, json } = await inJson('book', 'T-1', '--edition', 'owner', '--since', since);
    expect([status, json.since]).toEqual([0, since]);
    const [told] = json.books;
    const { json: stale } = await inJson('labels', 'T-1');
    expect(stale.labels[0]).toMatchObject({ page: null, code: 'T-1 AP-1' });
    expect(stale.warnings).toEqual([expect.stringContaining('shellbook book T-1 --edition service')]);
    expect(told.file).toBe(path.join('books', 'T-1-owner-supplement.pdf'));
    expect(told.changed.map((one: { page: string }) => one.page)).toContain('1');
    expect(told.pages).toBeGreaterThan(told.changed.length);
    expect(await shellbook('book', 'T-1', '--edition', 'owner', '--since', 'no-such-tag')).toMatchObject({
      status: 2,
      messages: expect.stringContaining('expected a commit, a tag or a date'),
    });
  });

  it('says where it cannot write, and keeps what was there', async () => {
    const file = path.join(store.root, 'a-file');
    writeFileSync(file, 'mine');
    const { status, messages } = await shellbook('book', 'T-1', '--edition', 'owner', '--out', 'a-file/book.pdf');
    expect(status).toBe(2);
    expect(messages).toContain('cannot be written');
    expect(readFileSync(file, 'utf8')).toBe('mine');
  });

  it('wants one edition for one file, and a known one', async () => {
    expect(await shellbook('book', 'T-1', '--out', 'x.pdf')).toMatchObject({
      status: 2,
      messages: expect.stringContaining('--edition'),
    });
    expect(await shellbook('book', 'T-1', '--edition', 'own')).toMatchObject({
      status: 2,
      messages: expect.stringContaining('owner, service, shop'),
    });
    expect(existsSync(path.join(store.root, 'x.pdf'))).toBe(false);
  });
});
