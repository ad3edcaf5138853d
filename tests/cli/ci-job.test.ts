import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { run } from '../../src/cli/program.js';
import { literalIo } from './literal-io.js';

const MAIN = fileURLToPath(new URL('../../src/main.ts', import.meta.url));
const FILE = '.github/workflows/check-records.yml';

interface Job {
  readonly strategy: { readonly matrix: { readonly share: readonly string[] } };
  readonly steps: readonly { readonly name?: string; readonly run?: string; readonly with?: Record<string, unknown> }[];
}

describe('the CI job of new-store --ci', () => {
  let top: string;
  let store: string;
  const git = (...args: readonly string[]): string => execFileSync('git', args, { cwd: store, encoding: 'utf8' });
  beforeAll(async () => {
    top = mkdtempSync(path.join(tmpdir(), 'shellbook-ci-'));
    store = path.join(top, 'store');
    const io = literalIo(top);
    expect(await run(['new-store', 'store', '--ci'], io)).toBe(0);
    expect(io.messages()).toContain('SHELLBOOK');
    for (const shell of ['A-1', 'A-2', 'A-3']) expect(await run(['new-shell', shell], literalIo(store))).toBe(0);
    git('config', 'user.name', 'K. Marrow');
    git('config', 'user.email', 'k@example.org');
    git('add', '--all');
    git('commit', '--quiet', '-m', 'Start');
    // What the job finds on its path.
    writeFileSync(
      path.join(top, 'shellbook'),
      `#!/bin/sh\nexec '${process.execPath}' --import '${import.meta.resolve('tsx')}' '${MAIN}' "$@"\n`,
    );
    chmodSync(path.join(top, 'shellbook'), 0o755);
  });
  afterAll(() => rmSync(top, { recursive: true, force: true }));

  const job = (): Job =>
    (parse(readFileSync(path.join(store, FILE), 'utf8')) as { readonly jobs: { readonly check: Job } }).jobs.check;
  const check = (share: string, before: string) => {
    const script = job().steps.find(({ name }) => name === 'check')?.run ?? 'exit 9';
    const env = { ...process.env, PATH: `${top}${path.delimiter}${process.env.PATH}`, SHARE: share, BEFORE: before };
    const done = spawnSync('bash', ['-e', '-c', script], { cwd: store, encoding: 'utf8', env });
    return { status: done.status, shells: [...done.stdout.matchAll(/^(A-\d)\b/gmu)].map((one) => one[1]) };
  };

  it('fetches the whole history, and its shares are all of the shares', () => {
    expect(job().steps.find((step) => step.with?.['fetch-depth'] !== undefined)?.with).toEqual({ 'fetch-depth': 0 });
    const { share } = job().strategy.matrix;
    expect(share).toEqual(share.map((_, i) => `${i + 1}/${share.length}`));
  });

  it('checks every shell once where there is nothing before, and only what changed where there is', () => {
    const { share } = job().strategy.matrix;
    const first = share.map((one) => check(one, '0000000000000000000000000000000000000000'));
    expect(first.map(({ status }) => status)).toEqual(share.map(() => 0));
    expect(first.flatMap(({ shells }) => [...new Set(shells)]).sort()).toEqual(['A-1', 'A-2', 'A-3']);
    writeFileSync(path.join(store, 'shells/A-2/welds.yaml'), '- {id: W-1, size: 5.25}\n');
    git('commit', '--quiet', '--all', '-m', 'A-2');
    const second = share.map((one) => check(one, 'HEAD~1'));
    expect(second.map(({ status }) => status).sort()).toEqual([0, 0, 0, 1]);
  });
});
