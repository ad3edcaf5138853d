/**
 * What is typed as a revision, a shell or a record is never an option, a range, a path or a second line to Git. Shells and records with
 * such names: tests/cli/hostile.test.ts.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { resolveRevision } from '../../src/store/revision.js';
import { shellbook } from '../cli/printed-book.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';

let store: SmallStore;
const git = (...args: readonly string[]): string => execFileSync('git', args, { cwd: store.root, encoding: 'utf8' });
beforeAll(async () => {
  store = await laySmallStore();
  git('tag', 'T-1-closed');
  store.write('shells/T-1/tests.yaml', '');
  await store.commit('Take the tests out');
});
afterAll(() => store.remove());

const REVISIONS = [
  '--upload-pack=touch caught',
  '--output=caught',
  '--exec=touch caught',
  '-c core.pager=touch',
  '-ccore.fsmonitor=touch',
  '--no-index',
  '--',
  '-',
  'HEAD..HEAD~1',
  'HEAD...HEAD',
  '^HEAD',
  'HEAD\n--output=caught',
  'HEAD\0',
  'HEAD:shop.yaml',
  ':shop.yaml',
  ':/Take',
  'HEAD@{upstream}',
  '@{-1}',
  'T-1-closed --output=caught',
  '$(touch caught)',
  '`touch caught`',
  ';touch caught',
  '|touch caught',
  '../../../../etc/passwd',
  'refs/../../x',
  '*',
  '',
  ' ',
] as const;

const told = (): string => `${git('for-each-ref')}${git('status', '--porcelain')}${git('config', '--local', '--list')}`;

describe('a revision', () => {
  it.each(REVISIONS)('is never an option, a range or a command: %j', async (revision) => {
    const before = told();
    for (const command of [
      ['compare', '--', 'T-1', revision],
      ['compare', '--', 'T-1', 'HEAD', revision],
      ['check', `--since=${revision}`],
    ]) {
      const { status, answer, messages } = await shellbook(store.root, ...command);
      expect([0, 1, 2], command.join(' ')).toContain(status);
      expect(answer + messages).not.toMatch(/Unexpected fault|usage: git|fatal:/u);
      if (status === 2) expect(messages.trim().split('\n').length).toBeLessThan(4);
    }
    expect(told()).toBe(before);
    expect(readdirSync(store.root)).not.toContain('caught');
    await expect(resolveRevision(store.root, revision)).rejects.toThrow(/No revision|expected/u);
  });

  it.each(['HEAD', 'T-1-closed', 'HEAD~1', 'HEAD^', 'master', 'main'])(
    'may be what a person means by it: %s',
    async (revision) => {
      const known = revision === 'master' || revision === 'main' ? git('branch', '--list', revision).trim() !== '' : true;
      if (known) expect(await resolveRevision(store.root, revision)).toBe(git('rev-parse', `${revision}^{commit}`).trim());
      else await expect(resolveRevision(store.root, revision)).rejects.toThrow('No revision');
    },
  );
});

/** Filters (`filter.*.clean`) do run, as in any `git status`: a store may keep its pictures by one. A clone brings no settings along. */
describe('a repository of somebody else', () => {
  it('starts no program of theirs while it is only looked at', async () => {
    const theirs = await laySmallStore();
    const caught = path.join(theirs.root, '..', `${path.basename(theirs.root)}-caught`);
    const program = path.join(theirs.root, '.git', 'theirs.sh');
    writeFileSync(program, `#!/bin/sh\ntouch "${caught}"\n`, { mode: 0o755 });
    mkdirSync(path.join(theirs.root, '.git', 'hooks'), { recursive: true });
    for (const hook of ['post-checkout', 'post-index-change', 'pre-auto-gc', 'reference-transaction', 'fsmonitor-watchman'])
      writeFileSync(path.join(theirs.root, '.git', 'hooks', hook), `#!/bin/sh\ntouch "${caught}"\n`, { mode: 0o755 });
    const settings = {
      'core.fsmonitor': program,
      'core.pager': program,
      'core.sshCommand': program,
      'diff.external': program,
      'core.hooksPath': '.git/hooks',
      'log.showSignature': 'true',
      'gpg.program': program,
    };
    for (const [name, value] of Object.entries(settings)) execFileSync('git', ['config', name, value], { cwd: theirs.root });
    writeFileSync(path.join(theirs.root, '.gitattributes'), '*.yaml diff=theirs\n');
    for (const [name, value] of [
      ['diff.theirs.textconv', program],
      ['diff.theirs.command', program],
    ])
      execFileSync('git', ['config', name as string, value as string], { cwd: theirs.root });
    for (const command of [
      ['check'],
      ['list'],
      ['history', 'T-1'],
      ['history', 'T-1', 'FL-1'],
      ['compare', 'T-1', 'HEAD', 'HEAD'],
      ['trace', 'welder', 'K7'],
      ['check', '--since', 'HEAD'],
      ['release', 'T-1'],
      ['where', 'T-1', 'DC'],
    ]) {
      const { messages } = await shellbook(theirs.root, ...command);
      expect(messages, command.join(' ')).not.toContain('Unexpected fault');
      expect(existsSync(caught), command.join(' ')).toBe(false);
    }
    theirs.remove();
  });
});
