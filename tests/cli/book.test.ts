import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { run } from '../../src/cli/program.js';
import { literalIo } from './literal-io.js';
import { laySmallStore, type SmallStore } from './small-store.js';

let store: SmallStore;
beforeAll(async () => {
  store = await laySmallStore({ '.gitignore': 'books/\n' });
});
afterAll(() => store.remove());

async function shellbook(...args: readonly string[]) {
  const io = literalIo(store.root);
  const status = await run(args, io);
  return { status, answer: io.answer(), messages: io.messages() };
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
  }, 120_000);

  it('says where it cannot write, and keeps what was there', async () => {
    const file = path.join(store.root, 'a-file');
    writeFileSync(file, 'mine');
    const { status, messages } = await shellbook('book', 'T-1', '--edition', 'owner', '--out', 'a-file/book.pdf');
    expect(status).toBe(2);
    expect(messages).toContain('cannot be written');
    expect(readFileSync(file, 'utf8')).toBe('mine');
  }, 120_000);

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
