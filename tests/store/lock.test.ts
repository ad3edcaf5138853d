import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readlinkSync, rmdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { underLock } from '../../src/store/lock.js';
import { hasEnded, ownName } from '../../src/store/own/owner.js';

/** Only Linux tells when a process began; elsewhere a dead owner is waited for. */
const LINUX = process.platform === 'linux';

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

/** Taken at the first try: nobody has the patience for a second. */
const takenAtOnce = (): Promise<string> => underLock(root, async () => 'taken', -1);

/** This process's own name with another number or another beginning. */
const named = (change: { readonly pid?: number; readonly began?: string; readonly machine?: string }): string => {
  const [machine, pid, began] = ownName().split('.');
  return [change.machine ?? machine, change.pid ?? pid, change.began ?? began].join('.');
};

describe.runIf(LINUX)('the lock of an owner who has ended', () => {
  it('is taken over at once after a kill', async () => {
    const { pid } = spawnSync(process.execPath, ['-e', '']);
    lockOf(named({ pid }));
    expect(await takenAtOnce()).toBe('taken');
    expect(readdirSync(root)).toEqual([]);
  });

  it('is taken over where another process has got its number since', async () => {
    lockOf(named({ began: '1' }));
    expect(await takenAtOnce()).toBe('taken');
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

describe('what stands in the place of the lock', () => {
  it.each(['a file', 'a link'])('is named at once and left alone where it is %s', async (what) => {
    const away = mkdtempSync(path.join(tmpdir(), 'shellbook-lock-away-'));
    if (what === 'a file') writeFileSync(lockPath, 'mine');
    else symlinkSync(away, lockPath);
    await expect(underLock(root, async () => {})).rejects.toThrow(`${lockPath} is ${what}, expected nothing or a folder there`);
    expect(readdirSync(away)).toEqual([]);
    if (what === 'a link') expect(readlinkSync(lockPath)).toBe(away);
    rmSync(away, { recursive: true });
  });

  it('is nobody’s where it is an empty folder, however old or new its time', async () => {
    mkdirSync(lockPath);
    expect(await takenAtOnce()).toBe('taken');
    expect(readdirSync(root)).toEqual([]);
  });

  it('is named, with its owner, where somebody is at work', async () => {
    await underLock(root, async () => {
      const said = spawnSync(
        process.execPath,
        [
          '--import',
          import.meta.resolve('tsx'),
          '--input-type=module',
          '-e',
          `import { underLock } from '${new URL('../../src/store/lock.ts', import.meta.url).href}'; await underLock(${JSON.stringify(root)}, async () => {}, -1);`,
        ],
        { encoding: 'utf8' },
      ).stderr;
      expect(said).toContain(`process ${process.pid} of this machine`);
      expect(said).toContain(`delete the folder ${lockPath}`);
    });
  });

  it('of another machine is waited for, whatever its clock says', async () => {
    lockOf('0123456789abcdef.1.1-1');
    await expect(takenAtOnce()).rejects.toThrow('process 1 of another machine');
    expect(readdirSync(lockPath)).toEqual(['0123456789abcdef.1.1-1']);
  });

  it('that was lost while its owner stood still is noticed before the next stroke', async () => {
    await underLock(root, async (held) => {
      held.still();
      for (const name of readdirSync(lockPath)) rmdirSync(path.join(lockPath, name));
      expect(() => held.still()).toThrow('took over');
    });
  });
});
