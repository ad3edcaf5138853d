import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runProgram } from '../../src/cli/program.js';
import { literalIo } from './literal-io.js';

const MAIN = fileURLToPath(new URL('../../src/main.ts', import.meta.url));
const FILE = 'check-records.sh';
const SHARES = ['1/4', '2/4', '3/4', '4/4'];

describe('the script of new-store --ci', () => {
  let top: string;
  let store: string;
  const git = (...args: readonly string[]): string => execFileSync('git', args, { cwd: store, encoding: 'utf8' });
  beforeAll(async () => {
    top = mkdtempSync(path.join(tmpdir(), 'shellbook-ci-'));
    store = path.join(top, 'store');
    const io = literalIo(top);
    expect(await runProgram(['new-store', 'store', '--ci'], io)).toBe(0);
    expect(io.messages()).toContain(FILE);
    for (const shell of ['A-1', 'A-2', 'A-3']) expect(await runProgram(['new-shell', shell], literalIo(store))).toBe(0);
    git('config', 'user.name', 'K. Marrow');
    git('config', 'user.email', 'k@example.org');
    git('add', '--all');
    git('commit', '--quiet', '-m', 'Start');
    // What the script finds on its path.
    writeFileSync(
      path.join(top, 'shellbook'),
      `#!/bin/sh\nexec '${process.execPath}' --import '${import.meta.resolve('tsx')}' '${MAIN}' "$@"\n`,
    );
    chmodSync(path.join(top, 'shellbook'), 0o755);
  });
  afterAll(() => rmSync(top, { recursive: true, force: true }));

  const check = (share: string, before: string) => {
    const env = { ...process.env, PATH: `${top}${path.delimiter}${process.env.PATH}`, SHARE: share, BEFORE: before };
    // From another folder: it finds its own store.
    const done = spawnSync(path.join(store, FILE), { cwd: top, encoding: 'utf8', env });
    return { status: done.status, shells: [...done.stdout.matchAll(/^(A-\d)\b/gmu)].map((one) => one[1]) };
  };

  it('may be run, and belongs to no one host of repositories', () => {
    expect(statSync(path.join(store, FILE)).mode & 0o111).toBe(0o111);
  });

  it('checks every shell once where there is nothing before, and only what changed where there is', () => {
    const first = SHARES.map((one) => check(one, '0000000000000000000000000000000000000000'));
    expect(first.map(({ status }) => status)).toEqual(SHARES.map(() => 0));
    expect(first.flatMap(({ shells }) => [...new Set(shells)]).sort()).toEqual(['A-1', 'A-2', 'A-3']);
    writeFileSync(path.join(store, 'shells/A-2/welds.yaml'), '- {id: W-1, size: 5.25}\n');
    git('commit', '--quiet', '--all', '-m', 'A-2');
    const second = SHARES.map((one) => check(one, 'HEAD~1'));
    expect(second.map(({ status }) => status).sort()).toEqual([0, 0, 0, 1]);
  });
});

describe('an option under its former name', () => {
  it('reads on, with a note of the name that it has now', async () => {
    const top = mkdtempSync(path.join(tmpdir(), 'shellbook-former-'));
    expect(await runProgram(['new-store', 'store'], literalIo(top))).toBe(0);
    const store = path.join(top, 'store');
    expect(await runProgram(['new-shell', 'A-1'], literalIo(store))).toBe(0);
    const io = literalIo(store);
    expect(await runProgram(['check', '--shard', '1/1'], io)).toBe(0);
    expect(io.messages()).toContain('--shard is now --share');
    expect(io.answer()).toContain('A-1');
    const help = literalIo(store);
    await runProgram(['check', '--help'], help);
    expect(help.answer()).toContain('--share');
    expect(help.answer()).not.toMatch(/--shard|--changed-since|junit/u);
    rmSync(top, { recursive: true, force: true });
  });
});
