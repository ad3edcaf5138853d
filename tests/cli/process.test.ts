import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';

const MAIN = fileURLToPath(new URL('../../src/main.ts', import.meta.url));
const TSX = import.meta.resolve('tsx');
const RECORDS = fileURLToPath(new URL('../../records', import.meta.url));

/** The real process: what a shell script sees. */
async function shellbook(...args: readonly string[]): Promise<{ status: number; out: string; err: string }> {
  try {
    const { stdout, stderr } = await promisify(execFile)(process.execPath, ['--import', TSX, MAIN, ...args]);
    return { status: 0, out: stdout, err: stderr };
  } catch (error) {
    const { code, stdout, stderr } = error as { code: number; stdout: string; stderr: string };
    return { status: code, out: stdout, err: stderr };
  }
}

describe('the process', () => {
  it('says its version', async () => {
    const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
    expect(await shellbook('--version')).toEqual({ status: 0, out: `${version}\n`, err: '' });
  });

  it('checks the clean working store with status 0', async () => {
    const { status, out } = await shellbook('check', '--store', RECORDS);
    expect(status).toBe(0);
    expect(out).toContain('No shells in this store yet');
  });

  it('keeps messages off standard output', async () => {
    const { status, out, err } = await shellbook('weights', 'NOPE', '--store', RECORDS);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).toMatch(/^shellbook: No shell NOPE in .*: it has no shells yet/u);
  });
});
