import fs, { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import isoGit from 'isomorphic-git';
import { type SimpleGit, simpleGit } from 'simple-git';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeContext } from '../../src/cli/context.js';
import { cutRecords } from '../../src/cli/demo/cut.js';
import { layDemoHistory } from '../../src/cli/demo/history.js';
import { layDemo } from '../../src/cli/demo/lay.js';
import { DEMO_MARKER } from '../../src/cli/demo/place.js';
import { signedStages } from '../../src/closeout/signed.js';
import { loadStore } from '../../src/model/load.js';
import { readStoreTextAt } from '../../src/store/at-revision.js';
import { UserError } from '../../src/user-error.js';
import { literalIo } from '../cli/literal-io.js';
import { printedDemo } from '../support/printed-demo.js';
import { DEMO } from './store.js';

const made: string[] = [];
const folder = (): string => {
  const dir = mkdtempSync(path.join(tmpdir(), 'shellbook-demo-'));
  made.push(dir);
  return dir;
};
afterAll(() => {
  for (const dir of made) rmSync(dir, { recursive: true, force: true });
});

function filesOf(dir: string, leftOut: readonly string[]): ReadonlyMap<string, Buffer> {
  const files = new Map<string, Buffer>();
  for (const entry of readdirSync(dir, { recursive: true, withFileTypes: true })) {
    const name = path.relative(dir, path.join(entry.parentPath, entry.name)).split(path.sep).join('/');
    if (entry.isFile() && !leftOut.includes(name.split('/')[0] as string)) files.set(name, readFileSync(path.join(dir, name)));
  }
  return files;
}

const context = (told: string[]) => ({
  ...makeContext({ json: false, quiet: true, color: false }, literalIo()),
  progress: (text: string) => void told.push(text),
});

describe('the demo’s history', () => {
  let dir: string;
  let git: SimpleGit;
  beforeAll(async () => {
    dir = path.join((await printedDemo()).top, 'demo');
    git = simpleGit(dir);
  });

  const log = async (...more: readonly string[]): Promise<readonly string[]> =>
    (await git.raw(['log', '--format=%an%x09%ae%x09%aI%x09%cI%x09%s', ...more])).trim().split('\n');

  it('has at least 25 commits by several people, in the order of their dates', async () => {
    const commits = (await log('--reverse')).map((line) => line.split('\t'));
    expect(commits.length).toBeGreaterThanOrEqual(25);
    expect(new Set(commits.map(([author]) => author)).size).toBeGreaterThanOrEqual(5);
    for (const [, email, authored, committed] of commits) {
      expect(email).toMatch(/\.example$/u);
      expect(committed).toBe(authored);
    }
    const days = commits.map(([, , authored]) => Date.parse(authored as string));
    expect(days).toEqual([...days].sort((a, b) => a - b));
    expect(Math.max(...days)).toBeLessThan(Date.parse('2026-11-25T00:00:00Z'));
  });

  it('leaves no empty commit and nothing uncommitted', async () => {
    const stats = (await git.raw(['log', '--format=%x00%s', '--name-only'])).split('\0').slice(1);
    expect(stats.filter((one) => one.trim().split('\n').length < 2)).toEqual([]);
    expect(await git.raw(['status', '--porcelain'])).toBe('');
  });

  it('ends with the committed store byte for byte', () => {
    const expected = filesOf(DEMO, []);
    const found = filesOf(dir, ['.git', 'books', DEMO_MARKER]);
    expect([...found.keys()].sort()).toEqual([...expected.keys()].sort());
    expect([...found].filter(([name, bytes]) => !expected.get(name)?.equals(bytes)).map(([name]) => name)).toEqual([]);
  });

  it('closes the finished shell with an annotated tag, and amends it afterwards', async () => {
    expect((await git.raw(['cat-file', '-t', 'OV-021-closed'])).trim()).toBe('tag');
    const after = await log('OV-021-closed..main', '--', 'shells/OV-021');
    expect(after.length).toBeGreaterThanOrEqual(4);
    const before = await git.raw(['ls-tree', '-r', '--name-only', 'OV-021-closed', '--', 'shells/OV-021']);
    expect(before).not.toContain('amendments.yaml');
  });

  it('closes it again as revision B after its amendments, each time with a tag that others read alike', async () => {
    const tags = (await git.raw(['tag', '--list', 'OV-021-closed*'])).trim().split('\n');
    expect(tags).toEqual(['OV-021-closed', 'OV-021-closed-B']);
    for (const [tag, letter] of [
      ['OV-021-closed', 'A'],
      ['OV-021-closed-B', 'B'],
    ] as const) {
      // isomorphic-git: another reader of the same repository.
      const ref = await isoGit.resolveRef({ fs, dir, ref: `refs/tags/${tag}` });
      const read = await isoGit.readTag({ fs, dir, oid: ref });
      expect(read.tag.message).toMatch(new RegExp(`^OV-021 closed, revision ${letter}\\n\\nFingerprint: [0-9a-f]{64}`, 'u'));
      expect(read.tag.object).toBe((await git.raw(['rev-parse', `${tag}^{commit}`])).trim());
      const tree = await isoGit.readTree({ fs, dir, oid: read.tag.object, filepath: 'shells/OV-021' });
      expect(tree.oid).toBe((await git.raw(['rev-parse', `${tag}:shells/OV-021`])).trim());
    }
    expect((await git.raw(['cat-file', 'tag', 'OV-021-closed-B'])).trim()).toContain('Amendments: AM-01, AM-02, AM-03, AM-04');
    expect(await git.raw(['fsck', '--strict', '--full'])).toBe('');
  });

  it('has sign-offs that hold in every commit but between an amendment and its look', async () => {
    const open: string[] = [];
    for (const line of await log(
      '--reverse',
      '--format=%H %s',
      '--',
      ...['signoffs', 'amendments', 'clamps'].map((one) => `shells/OV-021/${one}.yaml`),
    )) {
      const commit = line.slice(0, 40);
      const shell = loadStore(await readStoreTextAt(dir, commit, 'OV-021')).shells.get('OV-021');
      const lapsed = shell ? signedStages(shell.model).filter(({ standing }) => standing !== 'holds') : [];
      if (lapsed.length > 0) open.push(`${line.slice(41)}: ${lapsed.map(({ signoff }) => signoff.stage).join(', ')}`);
    }
    expect(open).toEqual(['OV-021: U-bolts checked after 640 mi, two took a quarter turn: subframe']);
  });

  it('keeps true earlier versions: a weld size, a reject before its repair, a splice that moved', async () => {
    const patches = async (file: string): Promise<string> => git.raw(['log', '-p', '--format=%s', '--', `shells/OV-021/${file}`]);
    expect(await patches('welds-floor.yaml')).toMatch(/^-.*W-0013.*size: 3\/16 in/mu);
    const turnedDown = await git.raw([
      'log',
      '--reverse',
      '--format=%H',
      '-S',
      'crater crack at the stop',
      '--',
      'shells/OV-021/welds-floor.yaml',
    ]);
    const first = await git.raw(['show', `${turnedDown.split('\n')[0]}:shells/OV-021/welds-floor.yaml`]);
    expect(first).toContain('result: reject, reason: crater crack at the stop}');
    expect(first).not.toContain('repair: 1}');
    expect(await patches('services/dc-house.yaml')).toMatch(/^-.*95-1\/2 in\]/mu);
  });

  it('gives the same commits every time, whatever the user’s Git settings say', async () => {
    const home = folder();
    writeFileSync(
      path.join(home, '.gitconfig'),
      '[user]\n\tname = Somebody Else\n\temail = else@nowhere.example\n[core]\n\tautocrlf = true\n[commit]\n\tgpgsign = true\n',
    );
    const before = process.env.HOME;
    process.env.HOME = home;
    try {
      const again = folder();
      const told: string[] = [];
      await layDemo(again, context(told));
      expect(told.filter((text) => text.startsWith('Commit ')).length).toBe((await log()).length);
      expect((await simpleGit(again).raw(['rev-parse', 'main'])).trim()).toBe((await git.raw(['rev-parse', 'main'])).trim());
    } finally {
      process.env.HOME = before;
    }
  });

  it('writes nothing where there is something already, or where there is no demo store', async () => {
    const full = folder();
    writeFileSync(path.join(full, 'mine.txt'), 'mine');
    const close = () => Promise.reject(new Error('there is nothing to close'));
    await expect(layDemoHistory(DEMO, full, close)).rejects.toThrow(UserError);
    expect(readdirSync(full)).toEqual(['mine.txt']);
    await expect(layDemoHistory(full, folder(), close)).rejects.toThrow(/not the demo store/u);
  });
});

describe('cutRecords', () => {
  it('gives every file of the store back when its pieces are joined', () => {
    for (const [name, bytes] of filesOf(DEMO, [])) {
      if (!name.endsWith('.yaml')) continue;
      const text = bytes.toString('utf8');
      expect(
        cutRecords(text)
          .map((piece) => piece.text)
          .join(''),
        name,
      ).toBe(text);
    }
  });

  it('keeps a comment with the record below it, and a list’s key with the list', () => {
    const text =
      '# head\nservice: A\n\nnodes:\n  - {id: N1}\n\n  # why\n  - id: N2\n    note: two\n\n# below\nruns:\n  - {id: R1}\n';
    expect(cutRecords(text).map((piece) => [piece.list, piece.record?.id, piece.text])).toEqual([
      [0, undefined, '# head\nservice: A\n\nnodes:\n'],
      [0, 'N1', '  - {id: N1}\n'],
      [0, 'N2', '\n  # why\n  - id: N2\n    note: two\n'],
      [1, undefined, '\n# below\nruns:\n'],
      [1, 'R1', '  - {id: R1}\n'],
    ]);
  });

  it('leaves shell.yaml whole', () => {
    const text = 'shell: X-1\ntanks:\n  - {id: A}\n  - {id: B}\n';
    expect(cutRecords(text)).toEqual([{ text, list: -1 }]);
  });
});
