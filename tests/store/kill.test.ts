import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { readStoreText } from '../../src/store/read.js';
import { updateFile } from './update-file.js';

/** A sample; `npm run fuzz` kills 300. */
const KILLS = process.env.SHELLBOOK_FUZZ === undefined ? 15 : 300;
const CHILD = fileURLToPath(new URL('writer-child.mjs', import.meta.url));
const SOURCE = new URL('../../src/store/write.ts', import.meta.url);
const BUILT = new URL('../../dist/store/write.js', import.meta.url);
/** As built, where that is of these sources: it starts sooner. */
const isBuilt = existsSync(BUILT) && statSync(BUILT).mtimeMs > statSync(SOURCE).mtimeMs;
const START = isBuilt ? [CHILD, BUILT.href] : ['--import', import.meta.resolve('tsx'), CHILD, SOURCE.href];
const FILE = 'shells/T-1/components.yaml';

const made: string[] = [];
afterAll(() => {
  for (const dir of made) rmSync(dir, { recursive: true, force: true });
});

/** A store whose list is long enough that writing it takes a while. */
async function newStore(records = 0): Promise<string> {
  const root = mkdtempSync(path.join(tmpdir(), 'shellbook-kill-'));
  made.push(root);
  writeFileSync(path.join(root, 'shop.yaml'), 'shop: {name: Test shop}\n');
  const first = Array.from({ length: records }, (_, i) => `- {id: OLD-${i}, name: fitting, note: ${'o'.repeat(200)}}\n`).join('');
  await updateFile(root, FILE, () => first);
  return root;
}

const child = (...args: readonly string[]): ChildProcess =>
  spawn(process.execPath, [...START, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });

/** Kills a writer at a random moment of its work, after it has said `least` ids; gives those that it said were safe. */
function interrupted(root: string, least: number): Promise<readonly string[]> {
  return new Promise((resolve, reject) => {
    const writer = child(root, 'NEW');
    let said = '';
    let failed = '';
    writer.stderr?.on('data', (bytes: Buffer) => {
      failed += bytes.toString();
    });
    let aimed = false;
    writer.stdout?.on('data', (bytes: Buffer) => {
      said += bytes.toString();
      if (aimed || safeIn(said).length < least) return;
      aimed = true;
      setTimeout(() => writer.kill('SIGKILL'), Math.random() * 40);
    });
    writer.on('close', (_status, signal) => {
      if (signal !== 'SIGKILL') reject(new Error(`the writer ended by itself: ${failed}`));
      else resolve(safeIn(said));
    });
  });
}

/** After `ready`; the last line may be cut. */
const safeIn = (said: string): readonly string[] => said.split('\n').slice(1, -1);

const idsIn = (text: string): readonly string[] => (parse(text) as { readonly id: string }[]).map(({ id }) => id);

describe('a writer killed at any moment', () => {
  it(`loses nothing and leaves a valid store, ${KILLS} times`, async () => {
    const stores: string[] = [];
    const one = async (least: number): Promise<void> => {
      const root = await newStore(400);
      const safe = await interrupted(root, least);
      expect(safe.length).toBeGreaterThanOrEqual(least);
      const text = readFileSync(path.join(root, FILE), 'utf8');
      const ids = idsIn(text);
      const added = ids.filter((id) => id.startsWith('NEW-'));
      expect(ids.filter((id) => id.startsWith('OLD-'))).toHaveLength(400);
      // In order, none missing; at most the one in hand more than was told.
      expect(added).toEqual(added.map((_, i) => `NEW-${i}`));
      expect(added.slice(0, safe.length)).toEqual(safe);
      expect(added.length - safe.length).toBeLessThanOrEqual(1);
      expect(text.endsWith('}\n')).toBe(true);
      // What the killed one left behind is no part of the record.
      expect([...(await readStoreText(root)).files.keys()]).toEqual([FILE, 'shop.yaml']);
      stores.push(root);
    };
    // Some before they have written anything, some at the second record, some at the third.
    for (let i = 0; i < KILLS; i += 2) await Promise.all([one(i % 3), ...(i + 1 < KILLS ? [one((i + 1) % 3)] : [])]);
    // Work goes on where they were killed: the dead one's lock is taken over, what it left is swept away.
    await Promise.all(
      stores.slice(0, 20).map(async (root) => {
        const before = idsIn(readFileSync(path.join(root, FILE), 'utf8'));
        await updateFile(root, FILE, (old) => `${old}- {id: AFTER, name: fitting}\n`);
        expect(idsIn(readFileSync(path.join(root, FILE), 'utf8'))).toEqual([...before, 'AFTER']);
        expect(readdirSync(path.join(root, 'shells/T-1'))).toEqual(['components.yaml']);
        expect(readdirSync(root).sort()).toEqual(['shells', 'shop.yaml']);
      }),
    );
  });
});

describe('fifty writers at once', () => {
  it('lose none of each other’s records, as processes', async () => {
    const root = await newStore();
    const writers = Array.from({ length: 50 }, (_, i) => child(root, `P${i}`, '2'));
    const statuses = await Promise.all(writers.map((writer) => new Promise((done) => writer.on('close', done))));
    expect(statuses).toEqual(statuses.map(() => 0));
    const ids = idsIn(readFileSync(path.join(root, FILE), 'utf8'));
    expect([...ids].sort()).toEqual(
      Array.from({ length: 50 }, (_, i) => [`P${i}-0`, `P${i}-1`])
        .flat()
        .sort(),
    );
  });

  it('lose none within one process', async () => {
    const root = await newStore();
    await Promise.all(Array.from({ length: 50 }, (_, i) => updateFile(root, FILE, (old) => `${old}- {id: A-${i}}\n`)));
    expect(idsIn(readFileSync(path.join(root, FILE), 'utf8'))).toHaveLength(50);
  });

  it('leave a repository that git itself finds whole', async () => {
    const root = await newStore(10);
    const git = (...args: readonly string[]) =>
      spawnSync('git', ['-c', 'user.name=K', '-c', 'user.email=k@example.org', ...args], { cwd: root, encoding: 'utf8' });
    git('init', '--quiet');
    git('add', '.');
    git('commit', '--quiet', '-m', 'one');
    await Promise.all(Array.from({ length: 10 }, (_, i) => updateFile(root, FILE, (old) => `${old}- {id: G-${i}}\n`)));
    expect(git('status', '--porcelain').stdout).toBe(` M ${FILE}\n`);
    git('commit', '--quiet', '--all', '-m', 'two');
    const checked = git('fsck', '--strict', '--full');
    expect([checked.status, checked.stdout]).toEqual([0, '']);
  });
});
