/** The browser outlives nobody, listens to nobody else, and leaves nothing lying about. */
import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loweredUser } from '../../src/book/print/lowered-user.js';
import { laySmallStore, type SmallStore } from '../cli/small-store.js';

const MAIN = fileURLToPath(new URL('../../dist/main.js', import.meta.url));
const CHROMIUM = new URL('../../dist/book/print/chromium.js', import.meta.url).href;
const LINUX = process.platform === 'linux';

const SIGNALS: readonly NodeJS.Signals[] =
  process.env.SHELLBOOK_FUZZ === undefined ? ['SIGHUP'] : ['SIGHUP', 'SIGTERM', 'SIGINT'];

let store: SmallStore;
/** The system's place for temporary folders, for these processes alone. */
let place: string;
beforeAll(async () => {
  store = await laySmallStore();
  place = mkdtempSync(path.join(tmpdir(), 'shellbook-life-'));
  chmodSync(place, 0o755);
});
afterAll(() => {
  store.remove();
  rmSync(place, { recursive: true, force: true, maxRetries: 5 });
});

const started = (...args: readonly string[]): ChildProcess =>
  spawn(process.execPath, [...args], {
    cwd: store.root,
    env: { ...process.env, TMPDIR: place },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
const OPEN = `import { openChromium } from '${CHROMIUM}'; const { browser, notices } = await openChromium();
console.log(JSON.stringify({ end: browser.wsEndpoint(), notices })); setInterval(() => {}, 1000);`;

/** Processes whose command line names a profile in our place, by number. */
const browsers = (): readonly number[] =>
  execFileSync('ps', ['-eo', 'pid=,args='], { encoding: 'utf8' })
    .split('\n')
    .filter((line) => line.includes(place) && line.includes('--user-data-dir'))
    .map((line) => Number.parseInt(line, 10));
const profiles = (): readonly string[] => readdirSync(place).filter((name) => name.startsWith('shellbook-'));

async function until(holds: () => boolean, seconds = 25): Promise<boolean> {
  for (let i = 0; i < seconds * 20 && !holds(); i++) await new Promise((done) => setTimeout(done, 50));
  return holds();
}

async function ended(
  child: ChildProcess,
): Promise<{ readonly status: number | null; readonly said: string; readonly out: string }> {
  let said = '';
  let out = '';
  child.stderr?.on('data', (piece) => {
    said += String(piece);
  });
  child.stdout?.on('data', (piece) => {
    out += String(piece);
  });
  const status = await new Promise<number | null>((done) => child.on('close', (code) => done(code)));
  return { status, said, out };
}

describe.runIf(LINUX)('the browser', () => {
  it('is driven through a pipe, ends with its parent when that is killed outright, and its folder goes at the next start', async () => {
    const first = started('--input-type=module', '-e', OPEN);
    const told = await new Promise<string>((done) => first.stdout?.once('data', (piece) => done(String(piece))));
    const { end, notices } = JSON.parse(told) as { end: string; notices: readonly string[] };
    expect(end).toBe('');
    const listening = browsers().flatMap((pid) => portsOf(pid));
    expect(listening).toEqual([]);
    // In a sandbox, or it says that it is in none.
    const commands = browsers().map((pid) => readFileSync(`/proc/${pid}/cmdline`, 'utf8'));
    expect(commands.some((one) => one.includes('--no-sandbox'))).toBe(notices.length > 0);
    if (process.getuid?.() !== 0 || loweredUser() !== undefined) expect(browsers().every((pid) => uidOf(pid) !== 0)).toBe(true);
    first.kill('SIGKILL');
    expect(await until(() => browsers().length === 0)).toBe(true);
    expect(profiles().length).toBe(1);
    const second = started('--input-type=module', '-e', OPEN);
    await new Promise((done) => second.stdout?.once('data', done));
    expect(profiles().length).toBe(1);
    second.kill('SIGTERM');
    expect(await until(() => browsers().length === 0)).toBe(true);
  });

  it.each(SIGNALS)('goes with its folder when printing is ended by %s: one message, status 2', async (signal) => {
    const child = started(MAIN, 'book', 'T-1', '--quiet');
    const all = ended(child);
    expect(await until(() => browsers().length > 0)).toBe(true);
    const own = ownProfiles(child);
    child.kill(signal);
    const { status, said, out } = await all;
    expect([status, said, out]).toEqual([2, `shellbook: Ended by ${signal}: what was not finished was not written.\n`, '']);
    expect(await until(() => browsers().length === 0)).toBe(true);
    expect(own().filter((name) => name.includes('profile') || name.includes('git'))).toEqual([]);
    expect(existsSync(path.join(store.root, 'books'))).toBe(false);
  });

  it('that is killed while it prints is one message, status 2, and nothing half', async () => {
    let landed = false;
    // A stroke may come a moment too early or too late; then the book is whole, and the next one is tried.
    for (let i = 0; i < TRIES && !landed; i++) {
      const child = started(MAIN, 'book', 'T-1', '--quiet');
      const all = ended(child);
      expect(await until(() => browsers().length > 0 && isAtWork(browsers()[0] as number))).toBe(true);
      for (const pid of browsers()) kill(pid);
      const { status, said } = await all;
      landed = status === 2;
      if (landed) {
        expect(said.trim().split('\n')).toHaveLength(1);
        expect(said).toMatch(/The browser (?:ended before it had printed|.* does not start)|What it waited for is gone/u);
        expect(existsSync(path.join(store.root, 'books'))).toBe(false);
      } else {
        expect(status).toBe(0);
        rmSync(path.join(store.root, 'books'), { recursive: true });
      }
    }
    expect(landed).toBe(true);
  });
});

const TRIES = 8;

function kill(pid: number): void {
  try {
    process.kill(pid, 'SIGKILL');
  } catch {
    // It ended in this moment.
  }
}

/** It has a page open. */
const isAtWork = (pid: number): boolean => {
  const uid = uidOf(pid);
  return execFileSync('ps', ['-eo', 'uid=,args='], { encoding: 'utf8' })
    .split('\n')
    .some((line) => Number.parseInt(line, 10) === uid && line.includes('--type=renderer'));
};

/** Names of folders that bear this process's number. */
const ownProfiles = (child: ChildProcess) => (): readonly string[] =>
  profiles().filter((name) => name.includes(`.${child.pid}.`));

const uidOf = (pid: number): number => Number(/^Uid:\s+(\d+)/mu.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1]);

/** proc(5): sockets of a process beside those that listen (state 0A) in /proc/net/tcp. */
function portsOf(pid: number): readonly string[] {
  const listen = ['tcp', 'tcp6'].flatMap((kind) =>
    existsSync(`/proc/net/${kind}`)
      ? readFileSync(`/proc/net/${kind}`, 'utf8')
          .split('\n')
          .map((line) => line.trim().split(/\s+/u))
          .filter((fields) => fields[3] === '0A')
          .map((fields) => `socket:[${fields[9]}]`)
      : [],
  );
  try {
    const links = execFileSync('ls', ['-l', `/proc/${pid}/fd`], { encoding: 'utf8' });
    return listen.filter((one) => links.includes(one));
  } catch {
    return [];
  }
}
