/**
 * No setting of Git's, of whomsoever, changes an answer or starts a program while a store is looked at. SHELLBOOK_FUZZ tries each
 * setting by itself; every run tries them in handfuls.
 */
import { execFileSync } from 'node:child_process';
import { appendFileSync, cpSync, existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { CLOSABLE } from '../cli/closable.js';
import { shellbook } from '../cli/printed-book.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';
import { SETTINGS, THEIRS, VARIABLES } from './git-settings.js';

let store: SmallStore;
let saved: string;
let caught: string;
let program: string;
let expected: readonly string[];

const git = (...args: readonly string[]): string =>
  execFileSync('git', ['-c', 'core.hooksPath=/dev/null', ...args], { cwd: store.root, encoding: 'utf8' });

const COMMANDS = [
  ['check', 'T-1', '--json'],
  ['list', '--json'],
  ['history', 'T-1', '--json'],
  ['history', 'T-1', 'FL-2', '--json'],
  ['compare', 'T-1', 'HEAD~1', 'HEAD', '--json'],
  ['compare', 'T-1', '2026-03-01', 'HEAD'],
  ['trace', 'welder', 'K7', '--json'],
  ['check', '--since', 'HEAD~1', '--json'],
  ['release', 'T-1', '--json'],
] as const;

/** What the commands say, computed anew. */
async function answers(): Promise<readonly string[]> {
  rmSync(path.join(store.root, '.git/shellbook'), { recursive: true, force: true });
  const said: string[] = [];
  for (const command of COMMANDS) {
    const { status, answer, messages } = await shellbook(store.root, ...command, '--quiet');
    said.push(`${command.join(' ')}: ${status}\n${answer}${messages}`);
  }
  return said;
}

beforeAll(async () => {
  store = await laySmallStore(CLOSABLE);
  caught = `${store.root}-caught`;
  program = path.join(store.root, '.git', 'theirs.sh');
  const at = (date: string) => ({ ...process.env, GIT_AUTHOR_DATE: date, GIT_COMMITTER_DATE: date });
  execFileSync('git', ['commit', '--quiet', '--amend', '--no-edit', '--date=2026-02-01T10:00:00Z'], {
    cwd: store.root,
    env: at('2026-02-01T10:00:00Z'),
  });
  store.write('shells/T-1/members.yaml', `${git('show', 'HEAD:shells/T-1/members.yaml').replace('160 in}', '159 in}')}`);
  await store.commit('Rail right: measured again, 159 in (Zoë’s tape)');
  git('tag', '-a', '-m', 'T-1 closed', 'T-1-closed', 'HEAD~1');
  store.write('shells/T-1/clamps.yaml', '# new, and not committed\n');
  expected = await answers();
  saved = `${store.root}-saved`;
  cpSync(path.join(store.root, '.git'), saved, { recursive: true });
});
afterAll(() => {
  store.remove();
  rmSync(saved, { recursive: true, force: true });
});

/** A repository of theirs: whatever is named THEIRS leaves a mark when it is started. */
beforeEach(() => {
  rmSync(caught, { force: true });
  rmSync(path.join(store.root, '.git'), { recursive: true });
  cpSync(saved, path.join(store.root, '.git'), { recursive: true });
  writeFileSync(program, `#!/bin/sh\ntouch "${caught}"\ncat\n`, { mode: 0o755 });
  for (const folder of ['hooks', 'hooks-of-theirs']) {
    mkdirSync(path.join(store.root, '.git', folder), { recursive: true });
    for (const hook of ['post-index-change', 'pre-auto-gc', 'reference-transaction', 'fsmonitor-watchman', 'post-checkout'])
      writeFileSync(path.join(store.root, '.git', folder, hook), `#!/bin/sh\ntouch "${caught}"\n`, { mode: 0o755 });
  }
  const attributes = '* diff=theirs filter=theirs merge=theirs text eol=crlf working-tree-encoding=UTF-16 ident -diff\n';
  writeFileSync(path.join(store.root, '.git/info/attributes'), attributes);
  writeFileSync(path.join(store.root, 'attributes-of-theirs'), attributes);
});

const set = ([key, value]: readonly [string, string]): void => {
  const at = key.lastIndexOf('.');
  const [, section = '', sub] = /^([^.]+)(?:\.(.+))?$/u.exec(key.slice(0, at)) ?? [];
  const line = `[${section}${sub === undefined ? '' : ` "${sub}"`}]\n\t${key.slice(at + 1)} = ${JSON.stringify(value.replace(THEIRS, program))}\n`;
  appendFileSync(path.join(store.root, '.git/config'), line);
};

async function sameAnswers(what: string): Promise<void> {
  expect(await answers(), what).toEqual(expected);
  expect(existsSync(caught), what).toBe(false);
}

const HANDFUL = process.env.SHELLBOOK_FUZZ === undefined ? 45 : 1;
const handfuls = Array.from({ length: Math.ceil(SETTINGS.length / HANDFUL) }, (_, i) =>
  SETTINGS.slice(i * HANDFUL, (i + 1) * HANDFUL),
);

describe('an answer is the same, and starts nothing of theirs', () => {
  it.each(handfuls.map((some) => [`${some[0]?.[0]} … ${some.at(-1)?.[0]}`, some] as const))('with %s', async (name, some) => {
    for (const one of some) set(one);
    await sameAnswers(name);
  });

  it('with all of it in the environment', async () => {
    const kept = { ...process.env };
    const home = path.join(store.root, '.git', 'home');
    mkdirSync(path.join(home, 'git'), { recursive: true });
    for (const file of ['.gitconfig', 'git/config'])
      writeFileSync(path.join(home, file), '[color]\n\tui = always\n[log]\n\tshowRoot = false\n[core]\n\tabbrev = 4\n');
    writeFileSync(path.join(home, 'git/attributes'), '* -diff\n');
    Object.assign(process.env, { HOME: home, XDG_CONFIG_HOME: home });
    for (const [name, value] of Object.entries(VARIABLES)) process.env[name] = value.replace(THEIRS, program);
    try {
      await sameAnswers('environment');
    } finally {
      process.env = kept;
    }
  });

  it('with commits that stand in for others, grafts and notes', async () => {
    git('notes', 'add', '-m', 'theirs', 'HEAD~1');
    git('replace', 'HEAD', 'HEAD~1');
    writeFileSync(path.join(store.root, '.git/info/grafts'), `${git('rev-parse', 'HEAD')}`);
    await sameAnswers('replaced');
  });

  it('with files that Git is told to skip, to ignore, or to take for unchanged', async () => {
    const before = await answers();
    git('update-index', '--skip-worktree', 'shells/T-1/members.yaml');
    git('update-index', '--assume-unchanged', 'shells/T-1/welds.yaml');
    writeFileSync(path.join(store.root, '.git/info/exclude'), 'shells/T-1/clamps.yaml\n*.yaml\n');
    expect(await answers()).toEqual(before);
  });

  it('in a folder that has the inside of a repository in it, as a clone may bring along', async () => {
    const inside = { HEAD: 'ref: refs/heads/main\n', config: `[core]\n\tfsmonitor = ${program}\n\tpager = ${program}\n` };
    for (const [name, text] of Object.entries(inside)) writeFileSync(path.join(store.root, name), text);
    for (const name of ['objects', 'refs']) mkdirSync(path.join(store.root, name));
    try {
      await sameAnswers('bare');
      for (const folder of ['shells', 'library']) cpSync(saved, path.join(store.root, folder, '.git'), { recursive: true });
      await sameAnswers('repositories within');
    } finally {
      for (const name of ['HEAD', 'config', 'objects', 'refs', 'shells/.git', 'library/.git'])
        rmSync(path.join(store.root, name), { recursive: true, force: true });
    }
  });

  it('and leaves the repository as it was', async () => {
    const files = (): readonly string[] =>
      readdirSync(path.join(store.root, '.git'), { recursive: true, encoding: 'utf8' }).filter(
        (file) => !file.startsWith('shellbook'),
      );
    const before = files();
    await answers();
    expect(files()).toEqual(before);
  });
});
