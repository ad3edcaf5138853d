/** A history that cannot be read is said as what it is: no repository, no Git, refused, damaged, not all here, another user's. */
import { execFileSync, spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { CLOSABLE } from '../cli/closable.js';
import { shellbook } from '../cli/printed-book.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';

const MAIN = fileURLToPath(new URL('../../dist/main.js', import.meta.url));
let model: SmallStore;
let away: string;
let root: string;
beforeAll(async () => {
  model = await laySmallStore(CLOSABLE);
  for (const stage of ['floor', 'belly'])
    expect((await shellbook(model.root, 'signoff', 'T-1', stage, '--by', 'J2', '--date', '2026-05-01')).status).toBe(0);
  await model.commit('Sign the stages');
  execFileSync('git', ['tag', '-a', '-m', 'closed', 'T-1-closed'], { cwd: model.root });
});
afterAll(() => model.remove());
beforeEach(() => {
  away = mkdtempSync(path.join(tmpdir(), 'shellbook-states-'));
  chmodSync(away, 0o755);
  root = path.join(away, 'store');
  cpSync(model.root, root, { recursive: true });
  chmodSync(root, 0o755);
  rmSync(path.join(root, '.git/shellbook'), { recursive: true, force: true });
});
const env = { ...process.env };
afterEach(() => {
  process.env = { ...env };
  rmSync(away, { recursive: true, force: true });
});

const git = (...args: readonly string[]): string =>
  execFileSync('git', args, { cwd: root, encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
const objectOf = (name: string): string => {
  const id = git('rev-parse', name).trim();
  return path.join(root, '.git/objects', id.slice(0, 2), id.slice(2));
};
const COMMANDS = [
  ['history', 'T-1'],
  ['list', '--json'],
  ['check', 'T-1'],
  ['compare', 'T-1', 'T-1-closed', 'HEAD'],
  ['release', 'T-1'],
  ['close', 'T-1', '--no-books'],
] as const;

/** What each command says of the history; each one plain sentence. */
async function refusals(): Promise<readonly string[]> {
  const said: string[] = [];
  for (const command of COMMANDS) {
    const { status, answer, messages } = await shellbook(root, ...command, '--quiet');
    expect(answer + messages, command.join(' ')).not.toMatch(/Unexpected fault|mistake in shellbook|usage: git/u);
    // An answer that is given is the true one.
    if (status !== 2 && command[0] === 'list') expect(answer).toContain('"state": "closed"');
    if (status === 2) {
      expect(messages.trim().split('\n'), command.join(' ')).toHaveLength(1);
      said.push(messages.trim().replaceAll(root, 'STORE'));
    }
  }
  return said;
}

const DAMAGE: Readonly<Record<string, () => void>> = {
  'HEAD that says nothing': () => writeFileSync(path.join(root, '.git/HEAD'), 'nothing\n'),
  'HEAD that is gone': () => rmSync(path.join(root, '.git/HEAD')),
  'HEAD that leads out': () => writeFileSync(path.join(root, '.git/HEAD'), 'ref: refs/../../../etc/passwd\n'),
  'a branch that is no commit': () =>
    writeFileSync(path.join(root, '.git', git('symbolic-ref', 'HEAD').trim()), `${'0'.repeat(39)}1\n`),
  'a branch of garbage': () => writeFileSync(path.join(root, '.git', git('symbolic-ref', 'HEAD').trim()), 'garbage\n'),
  'a commit that is gone': () => rmSync(objectOf('HEAD'), { force: true }),
  'a commit that is cut short': () => {
    const commit = objectOf('HEAD');
    chmodSync(commit, 0o644);
    truncateSync(commit, 9);
  },
  'a tree that is gone': () => rmSync(objectOf('HEAD^{tree}'), { force: true }),
  'a folder of objects that is gone': () => rmSync(path.join(root, '.git/objects'), { recursive: true }),
  'a folder of references that is gone': () => rmSync(path.join(root, '.git/refs'), { recursive: true }),
  'a pipe among the references': () => void execFileSync('mkfifo', [path.join(root, '.git/refs/tags/pipe')]),
  'a pipe for HEAD': () => {
    rmSync(path.join(root, '.git/HEAD'));
    execFileSync('mkfifo', [path.join(root, '.git/HEAD')]);
  },
  'a .git that names a folder elsewhere': () => {
    rmSync(path.join(root, '.git'), { recursive: true });
    writeFileSync(path.join(root, '.git'), 'gitdir: ../nowhere\n');
  },
};

describe('a history that', () => {
  it.each(Object.keys(DAMAGE))('is damaged says so, and nothing else: %s', async (what) => {
    (DAMAGE[what] as () => void)();
    const said = await refusals();
    expect(said.length).toBeGreaterThan(3);
    for (const one of said) expect(one).toMatch(/is damaged: .+(?:fsck|another clone)|No revision/u);
  });

  it('has a record’s contents swapped under its name is damaged', async () => {
    const [one, other] = [objectOf('HEAD~1:shells/T-1/members.yaml'), objectOf('HEAD~1:shells/T-1/panels.yaml')];
    chmodSync(one, 0o644);
    writeFileSync(one, readFileSync(other));
    const { status, messages } = await shellbook(root, 'history', 'T-1', 'FL-1');
    expect([status, messages]).toEqual([2, expect.stringMatching(/is damaged: .*(?:something else|hash mismatch|corrupt)/u)]);
  });

  it('is of no repository says that, and the records are judged without it', async () => {
    rmSync(path.join(root, '.git'), { recursive: true });
    const { status, messages } = await shellbook(root, 'history', 'T-1');
    expect([status, messages]).toEqual([2, expect.stringContaining('not in a Git work tree')]);
    expect((await shellbook(root, 'check', 'T-1')).status).not.toBe(2);
  });

  it('needs a Git that is not installed says that', async () => {
    process.env.PATH = path.join(away, 'nowhere');
    const said = await refusals();
    expect(said.length).toBeGreaterThan(3);
    for (const one of said) expect(one).toContain('Git is not installed');
  });

  it('is not all here says what is missing: a shallow clone', async () => {
    const clone = path.join(away, 'shallow');
    execFileSync('git', ['clone', '--quiet', '--depth=1', `file://${root}`, clone], { stdio: 'ignore' });
    for (const command of [['history', 'T-1'], ['check', 'T-1'], ['list']]) {
      const { messages } = await shellbook(clone, ...command);
      expect(messages.replace(/\s+/gu, ' ')).toContain('This clone is shallow');
    }
    expect((await shellbook(clone, 'check', 'T-1', '--json')).answer).not.toContain('record.late-entry');
  });

  it('is not all here says what is missing: a partial clone, whose contents are not fetched', async () => {
    git('config', 'uploadpack.allowFilter', 'true');
    const clone = path.join(away, 'partial');
    execFileSync('git', ['clone', '--quiet', '--filter=blob:none', `file://${root}`, clone], { stdio: 'ignore' });
    const mark = path.join(away, 'fetched');
    writeFileSync(path.join(away, 'pack'), `#!/bin/sh\ntouch "${mark}"\nexec git-upload-pack "$@"\n`, { mode: 0o755 });
    execFileSync('git', ['config', 'remote.origin.uploadpack', path.join(away, 'pack')], { cwd: clone });
    for (const command of [
      ['history', 'T-1', 'FL-1'],
      ['compare', 'T-1', 'HEAD~1', 'HEAD'],
      ['check', 'T-1'],
    ]) {
      const { status, messages } = await shellbook(clone, ...command);
      if (status === 2) expect(messages.replace(/\s+/gu, ' ')).toMatch(/not all here|partial/u);
      expect(messages).not.toContain('Unexpected fault');
    }
    expect(existsSync(mark)).toBe(false);
  });
});

describe('a second user of the folder', () => {
  it('sees the same, and is told by Git’s own check when they would write', async () => {
    const first = (await shellbook(root, 'list', '--json')).answer;
    // Git's own way of trying its check of whose the files are.
    Object.assign(process.env, {
      GIT_TEST_ASSUME_DIFFERENT_OWNER: '1',
      GIT_CONFIG_GLOBAL: '/dev/null',
      GIT_CONFIG_NOSYSTEM: '1',
    });
    rmSync(path.join(root, '.git/shellbook'), { recursive: true, force: true });
    expect((await shellbook(root, 'list', '--json')).answer).toBe(first);
    expect(first).toContain('"state": "closed"');
    const { status, messages } = await shellbook(root, 'close', 'T-1', '--no-books');
    if (status !== 0) expect([status, messages]).toEqual([2, expect.stringMatching(/belongs to another user.*safe\.directory/u)]);
    writeFileSync(path.join(root, 'shells/T-1/amendments.yaml'), '# none yet\n');
    const changed = await shellbook(root, 'close', 'T-1', '--no-books');
    expect([changed.status, changed.messages]).toEqual([2, expect.stringMatching(/belongs to another user.*safe\.directory/u)]);
  });

  it('who may not read it is refused, and never told that nothing is signed', () => {
    chmodSync(path.join(root, '.git'), 0o700);
    // As root: another user. Else: what nobody may read.
    const isRoot = process.getuid?.() === 0;
    if (!isRoot) chmodSync(path.join(root, '.git'), 0o000);
    const [program, ...before] = isRoot
      ? ['setpriv', '--reuid=65534', '--regid=65534', '--clear-groups', process.execPath]
      : [process.execPath];
    for (const command of [['list'], ['history', 'T-1'], ['check', 'T-1'], ['release', 'T-1']]) {
      const { status, stdout, stderr } = spawnSync(program as string, [...before, MAIN, ...command, '--quiet', '--store', root], {
        cwd: away,
        encoding: 'utf8',
        env: { ...process.env, HOME: away },
      });
      expect([command[0], status, stdout]).toEqual([command[0], 2, '']);
      expect(stderr).toMatch(/no permission for .*\.git.*Ask its owner/u);
    }
    chmodSync(path.join(root, '.git'), 0o700);
    expect(readdirSync(root)).toContain('.git');
  });
});
