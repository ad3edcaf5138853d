import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import type { Asker } from '../../src/entry/asker.js';
import { literalIo } from './literal-io.js';

let root: string;
beforeAll(() => {
  root = mkdtempSync(path.join(tmpdir(), 'shellbook-merge-'));
});
afterAll(() => rmSync(root, { recursive: true, force: true }));

const store = (): string => path.join(root, 'shop');
const WELDS = 'shells/T-1/welds.yaml';

async function shellbook(args: readonly string[], ask?: Asker) {
  const io = literalIo(existsSync(store()) ? store() : root);
  const status = await runProgram(args, ask ? { ...io, ask: async () => ask } : io);
  return { status, answer: io.answer(), messages: io.messages() };
}

function git(...args: readonly string[]) {
  const who = ['-c', 'user.name=K. Marrow', '-c', 'user.email=k@example.org', '-c', 'core.hooksPath=/dev/null'];
  const { status, stdout, stderr } = spawnSync('git', [...who, ...args], { cwd: store(), encoding: 'utf8' });
  return { status, said: stdout + stderr };
}

const read = (): string => readFileSync(path.join(store(), WELDS), 'utf8');
function commit(text: string, message: string): void {
  writeFileSync(path.join(store(), WELDS), text);
  git('add', '.');
  git('commit', '-qm', message);
}

const FIRST = '- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 2 in, process: GMAW}\n';
const weld = (id: string): string => FIRST.replace('W-1', id);

describe('five people at once', () => {
  it('a new store has Git merge its records by record and field', async () => {
    expect((await shellbook(['new-store', 'shop'])).status).toBe(0);
    expect(readFileSync(path.join(store(), '.gitattributes'), 'utf8')).toContain('*.yaml merge=shellbook');
    expect(git('config', '--get', 'merge.shellbook.driver').said).toMatch(/dist\/main\.js' merge --driver %O %A %B %P/u);
    await shellbook(['new-shell', 'T-1']);
    commit(FIRST, 'Start');
    git('branch', '-M', 'main');
  });

  it('merges what two added to one list, and rebases it', () => {
    git('checkout', '-qb', 'two');
    commit(`${read()}${weld('W-3')}`, 'Weld three');
    git('checkout', '-q', 'main');
    commit(`${read().replace('size: 1/4 in', 'size: 5/16 in')}${weld('W-2')}`, 'Weld two');
    git('checkout', '-qb', 'three', 'two');
    const rebased = git('rebase', 'main');
    expect(rebased.status, rebased.said).toBe(0);
    expect(read()).toBe(`${FIRST.replace('1/4 in', '5/16 in')}${weld('W-2')}${weld('W-3')}`);
    git('checkout', '-q', 'main');
    const merged = git('merge', '--no-edit', 'two');
    expect(merged.status, merged.said).toBe(0);
    expect(read()).toBe(`${FIRST.replace('1/4 in', '5/16 in')}${weld('W-2')}${weld('W-3')}`);
  });

  it('makes a question of a real clash, which the check names and merge settles', async () => {
    git('checkout', '-qb', 'four');
    commit(
      read().replace('id: W-2, joins: [A, B], type: fillet, size: 1/4 in', 'id: W-2, joins: [A, B], type: fillet, size: 3/8 in'),
      'Weld two larger',
    );
    git('checkout', '-q', 'main');
    commit(
      read().replace('id: W-2, joins: [A, B], type: fillet, size: 1/4 in', 'id: W-2, joins: [A, B], type: fillet, size: 3/16 in'),
      'Weld two smaller',
    );
    const merged = git('merge', '--no-edit', 'four');
    expect(merged.status).toBe(1);
    expect(merged.said).toContain('welds.yaml: W-2: `size` is `3/16 in` here and `3/8 in` coming in (it was `1/4 in`)');
    const checked = await shellbook(['check', 'T-1']);
    expect([checked.status, checked.answer]).toEqual([
      1,
      expect.stringMatching(/shells\/T-1\/welds\.yaml:2:1\s+Two people changed `W-2`/u),
    ]);
    const silent = await shellbook(['merge']);
    expect([silent.status, silent.answer]).toEqual([1, 'shells/T-1/welds.yaml:2: W-2\n']);
    const asker: Asker = { text: async () => '', confirm: async () => true, choose: async () => 'coming in' };
    expect((await shellbook(['merge'], asker)).answer).toBe('Settled shells/T-1/welds.yaml.\n');
    expect(read()).toBe(`${FIRST.replace('1/4 in', '5/16 in')}${weld('W-2').replace('1/4 in', '3/8 in')}${weld('W-3')}`);
  });

  it('is tied to a further copy by merge --install', async () => {
    git('commit', '-qam', 'Settled');
    git('config', '--remove-section', 'merge.shellbook');
    expect((await shellbook(['merge', '--install'])).status).toBe(0);
    expect(git('config', '--get', 'merge.shellbook.driver').status).toBe(0);
    expect(git('status', '--short').said).toBe('');
  });

  it('tells a call that is not Git’s', async () => {
    expect((await shellbook(['merge', '--driver', 'a', 'b'])).messages).toContain('Git calls this with four names');
    expect((await shellbook(['merge', '--driver', 'a', 'b', 'c', 'd'])).messages).toMatch(/is not a file/u);
    expect((await shellbook(['merge', 'welds.yaml'])).status).toBe(2);
  });
});
