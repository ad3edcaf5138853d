import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { CLOSABLE } from '../cli/closable.js';
import { bookOf, shellbook } from '../cli/printed-book.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';

let store: SmallStore;
const git = (...args: readonly string[]): string => execFileSync('git', args, { cwd: store.root, encoding: 'utf8' }).trim();

beforeAll(async () => {
  store = await laySmallStore({ ...CLOSABLE, '.gitignore': 'books/\n' });
  for (const [name, background] of Object.entries({ 'p-1.jpg': '#446688', 'p-2.jpg': '#886644' })) {
    const picture = sharp({ create: { width: 320, height: 240, channels: 3, background } });
    store.write(`shells/T-1/photos/${name}`, await picture.jpeg().toBuffer());
  }
  for (const stage of ['floor', 'belly']) {
    const { status } = await shellbook(store.root, 'signoff', 'T-1', stage, '--by', 'J2', '--date', '2026-05-01');
    expect(status).toBe(0);
  }
  await store.commit('T-1: signed off');
});
afterAll(() => store.remove());

async function firstPage(file: string): Promise<string> {
  const task = getDocument({ data: new Uint8Array(readFileSync(file)), verbosity: 0 });
  const { items } = await (await (await task.promise).getPage(1)).getTextContent();
  await task.destroy();
  return items.map((item) => ('str' in item ? item.str : '')).join(' ');
}

it('says that the shell is closed where its papers cannot be printed, and how to get them', async () => {
  const inTheWay = path.join(store.root, 'books');
  writeFileSync(inTheWay, 'a file where the folder should be');
  const { status, answer, messages } = await shellbook(store.root, 'close', 'T-1', '--quiet');
  rmSync(inTheWay);
  expect([status, answer, git('tag', '--list')]).toEqual([2, '', 'T-1-closed']);
  expect(messages.replace(/\s+/gu, ' ')).toMatch(
    /T-1 is closed as T-1-closed, but its papers are not all printed: .*T-1-hand-over\.txt cannot be written: \w+ .*shellbook book T-1;.*shellbook release T-1 --print/u,
  );
  const again = await shellbook(store.root, 'close', 'T-1');
  expect([again.status, again.answer]).toEqual([0, expect.stringContaining('closed already')]);
  expect(again.messages).toContain('Its books again: shellbook book T-1;');
});

it('commits, tags, and prints three books and a sheet that are all of the tagged record', async () => {
  store.write(
    'shells/T-1/amendments.yaml',
    '- {id: AM-1, date: 2026-07-01, by: A1, reason: hook over the bench, changes: [CMP-1]}\n',
  );
  store.write(
    'shells/T-1/components.yaml',
    '- {id: CMP-1, name: hook, mass: 1 lb, at: [100 in, 0 in, 60 in], basis: weighed, date: 2026-07-01}\n',
  );
  const { status, answer } = await shellbook(store.root, 'close', 'T-1', '--quiet');
  const commit = git('rev-parse', 'HEAD');
  expect([status, answer.trim().split('\n')]).toEqual([
    0,
    [
      `T-1 is closed: revision B, tag T-1-closed-B on ${commit.slice(0, 8)}.`,
      'Committed: shells/T-1/amendments.yaml, shells/T-1/components.yaml',
      path.join('books', 'T-1-hand-over.txt'),
      path.join('books', 'T-1-hand-over.pdf'),
      ...['owner', 'service', 'shop'].map((edition) => path.join('books', `T-1-${edition}.pdf`)),
    ],
  ]);
  expect(git('rev-parse', 'T-1-closed-B^{commit}')).toBe(commit);
  expect(git('status', '--porcelain')).toBe('');
  expect(readdirSync(path.join(store.root, 'books')).sort()).toEqual([
    'T-1-hand-over.pdf',
    'T-1-hand-over.txt',
    'T-1-owner.pdf',
    'T-1-service.pdf',
    'T-1-shop.pdf',
  ]);
  expect(readFileSync(path.join(store.root, 'books/T-1-hand-over.txt'), 'utf8')).toContain(
    'State: closed as T-1-closed-B, revision B.',
  );
  expect(await firstPage(path.join(store.root, 'books/T-1-hand-over.pdf'))).toContain(
    'State: closed as T-1-closed-B, revision B.',
  );
  const signed = /^Fingerprint: ([0-9a-f]{64})$/mu.exec(git('cat-file', 'tag', 'T-1-closed-B'))?.[1];
  for (const edition of ['owner', 'service', 'shop']) {
    const told = JSON.parse((await shellbook(store.root, 'verify', bookOf(store, edition), '--json')).answer);
    // The tag is of the whole record, as the shop's book carries it; the others have a fingerprint of what they carry.
    expect(told, edition).toMatchObject({ matches_itself: true, matches_store: true });
    expect(told.fingerprint === signed, edition).toBe(edition === 'shop');
    expect(await firstPage(bookOf(store, edition)), edition).toContain('closed as T-1-closed-B');
  }
});
