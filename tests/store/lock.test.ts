import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { underLock } from '../../src/store/lock.js';
import { hasEnded, ownName } from '../../src/store/own/owner.js';

/** Only Linux tells when a process began; elsewhere a dead owner is waited for. */
const LINUX = process.platform === 'linux';
/** The one that keeps the lock fresh while it is held; whoever has to wait sets one more for each try. */
const TIMERS_AT_ONCE = 1;

let root: string;
let lockPath: string;
beforeEach(() => {
  root = mkdtempSync(path.join(tmpdir(), 'shellbook-lock-'));
  lockPath = path.join(root, '.shellbook.lock');
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

const lockOf = (owner: string): void => {
  mkdirSync(path.join(lockPath, owner), { recursive: true });
};

/** How many timers were set until the lock was taken. */
async function timersUntilTaken(): Promise<number> {
  const timers = vi.spyOn(globalThis, 'setTimeout');
  let count = Number.NaN;
  await underLock(root, async () => {
    count = timers.mock.calls.length;
  });
  timers.mockRestore();
  return count;
}

/** This process's own name with another number or another beginning. */
const named = (change: { readonly pid?: number; readonly began?: string; readonly machine?: string }): string => {
  const [machine, pid, began] = ownName().split('.');
  return [change.machine ?? machine, change.pid ?? pid, change.began ?? began].join('.');
};

describe.runIf(LINUX)('the lock of an owner who has ended', () => {
  it('is taken over at once after a kill', async () => {
    const { pid } = spawnSync(process.execPath, ['-e', '']);
    lockOf(named({ pid }));
    expect(await timersUntilTaken()).toBe(TIMERS_AT_ONCE);
    expect(readdirSync(root)).toEqual([]);
  });

  it('is taken over where another process has got its number since', async () => {
    lockOf(named({ began: '1' }));
    expect(await timersUntilTaken()).toBe(TIMERS_AT_ONCE);
  });

  it('goes to one of many who find it dead at the same time', async () => {
    lockOf(named({ began: '1' }));
    let inside = 0;
    let most = 0;
    await Promise.all(
      Array.from({ length: 20 }, () =>
        underLock(root, async () => {
          most = Math.max(most, ++inside);
          await new Promise((done) => setTimeout(done, 2));
          inside--;
        }),
      ),
    );
    expect([most, inside]).toEqual([1, 0]);
  });
});

describe('the lock of an owner who may be at work', () => {
  it.runIf(LINUX)('is left to a process that runs', async () => {
    const other = spawn(process.execPath, ['-e', 'setTimeout(() => {}, 60000)']);
    try {
      // Its beginning stands in the 22nd field of proc(5) stat, read here by awk.
      const began = spawnSync('awk', ['{sub(/.*\\) /, ""); print $20}', `/proc/${other.pid}/stat`], { encoding: 'utf8' }).stdout;
      expect(hasEnded(named({ pid: other.pid as number, began: began.trim() }))).toBe(false);
    } finally {
      other.kill('SIGKILL');
    }
  });

  it('is left to another machine, to another room of process numbers, and to a name that says nothing', () => {
    const elsewhere = '0123456789abcdef';
    expect([named({ machine: elsewhere, began: '1' }), 'x', '', '../x', '1.2.3'].filter(hasEnded)).toEqual([]);
  });

  it('is a folder that Git does not see', async () => {
    const git = (...args: readonly string[]) => spawnSync('git', args, { cwd: root, encoding: 'utf8' }).stdout;
    git('init', '--quiet');
    writeFileSync(path.join(root, 'shop.yaml'), 'shop: {name: Test shop}\n');
    await underLock(root, async () => {
      expect(readdirSync(lockPath)).toEqual([expect.stringMatching(new RegExp(`^${ownName()}-\\d+$`, 'u'))]);
      expect(git('status', '--porcelain', '--untracked-files=all')).toBe('?? shop.yaml\n');
    });
    expect(readdirSync(root).sort()).toEqual(['.git', 'shop.yaml']);
  });
});
