/**
 * A shop of fifteen years: what a command costs a shell as the store grows, and eight machines that share it, each with its own clone.
 * `npx tsx tests/bench/fleet.ts [COUNT…]` after a build; no test hangs on these figures.
 */
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { performance } from 'node:perf_hooks';
import { fleetCommits, fleetShell } from './fleet-store.js';
import { git, layRepository } from './ledger-store.js';
import { STARTED, saidSpent, watchedIn } from './spent.js';
import { say, tellGoals, told } from './tell.js';

const COUNTS = process.argv.slice(2).map(Number);
const SIZES = COUNTS.length > 0 ? COUNTS : [30, 100, 300];
const SHARES = 8;
const GOAL = 1.1;
const top = mkdtempSync(path.join(os.tmpdir(), 'shellbook-fleet-'));
const WATCHED = watchedIn(top);

interface Spent {
  readonly ms: number;
  readonly peakMb: number;
  readonly wallMs: number;
  readonly status: number | null;
  readonly answer: string;
}

function argsOf(args: readonly string[], store: string): readonly string[] {
  return [...WATCHED, STARTED, ...args, '--store', store, '--quiet'];
}

function spentOf(status: number | null, answer: string, said: string, wallMs: number): Spent {
  const spent = saidSpent(said);
  if (spent === undefined || (status !== 0 && status !== 1)) throw new Error(`ended with ${status}: ${said}`);
  return { ...spent, wallMs, status, answer };
}

function run(args: readonly string[], store: string): Spent {
  const start = performance.now();
  const done = spawnSync(process.execPath, argsOf(args, store), { encoding: 'utf8', maxBuffer: 1 << 30 });
  return spentOf(done.status, done.stdout, done.stderr, performance.now() - start);
}

function runBeside(args: readonly string[], store: string): Promise<Spent> {
  const start = performance.now();
  const child = spawn(process.execPath, argsOf(args, store));
  const [out, said]: [string[], string[]] = [[], []];
  child.stdout.setEncoding('utf8').on('data', (text: string) => out.push(text));
  child.stderr.setEncoding('utf8').on('data', (text: string) => said.push(text));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (status) => {
      try {
        resolve(spentOf(status, out.join(''), said.join(''), performance.now() - start));
      } catch (error) {
        reject(error);
      }
    });
  });
}

try {
  const table = new Map<string, Spent[]>();
  const note = (name: string, spent: Spent): void => void table.set(name, [...(table.get(name) ?? []), spent]);
  for (const count of SIZES) {
    const dir = path.join(top, `of-${count}`);
    lay(dir, count);
    note('check, cold', run(['check', '--json'], dir));
    note('check, asked again', run(['check', '--json'], dir));
    note('list, cold', run(['list'], dir));
    note('list, warm', run(['list'], dir));
    note('trace a welder', run(['trace', 'welder', 'F3'], dir));
    note('trace a heat', run(['trace', 'heat', 'H-12'], dir));
    const file = path.join(top, `of-${count}.tar.gz`);
    note('backup', run(['backup', file], dir));
    note('recover', run(['recover', file, path.join(top, `back-${count}`)], dir));
  }
  for (const [name, spent] of table) tellLine(name, spent);
  await shares(SIZES.at(-1) as number);
} finally {
  rmSync(top, { recursive: true, force: true });
}
tellGoals();

function lay(dir: string, count: number): void {
  const commits = [...fleetCommits(count)];
  layRepository(
    dir,
    commits.map(({ files }) => files),
    (n) => commits[n]?.at ?? 0,
  );
}

function tellLine(name: string, spent: readonly Spent[]): void {
  const each = spent.map(
    ({ ms, peakMb }, n) => `${ms.toFixed(0)} ms, ${(ms / (SIZES[n] as number)).toFixed(1)} a shell, ${peakMb.toFixed(0)} MB`,
  );
  say(`${name}\n  ${SIZES.map((count, n) => `${count} shells: ${each[n]}`).join('\n  ')}`);
  const [first, last] = [spent[0] as Spent, spent.at(-1) as Spent];
  told(
    `${name}, cost a shell, ${SIZES.at(-1)} shells ÷ ${SIZES[0]}`,
    last.ms / (SIZES.at(-1) as number) / (first.ms / (SIZES[0] as number)),
    GOAL,
  );
}

/** Eight machines, each with its own clone of one remote: each checks its share, notes that on a shell of its own, and pushes. */
async function shares(count: number): Promise<void> {
  const remote = path.join(top, 'remote.git');
  git(top, ['clone', '--quiet', '--bare', path.join(top, `of-${count}`), remote]);
  const clones = Array.from({ length: SHARES }, (_, n) => path.join(top, `clone-${n + 1}`));
  for (const clone of clones) git(top, ['clone', '--quiet', remote, clone]);
  const whole = run(['check', '--json'], cloneOf(remote));
  const start = performance.now();
  const parts = await Promise.all(
    clones.map((clone, n) => runBeside(['check', '--json', '--share', `${n + 1}/${SHARES}`], clone)),
  );
  const wallMs = performance.now() - start;
  say(`\n${SHARES} shares of ${count} shells, each in its own clone, all at once on ${os.availableParallelism()} cores`);
  say(`  one process, all: ${(whole.ms / 1000).toFixed(1)} s of processor, ${(whole.wallMs / 1000).toFixed(1)} s by the clock`);
  say(
    `  ${SHARES} processes: ${parts.map(({ ms }) => (ms / 1000).toFixed(1)).join(', ')} s of processor, ${(wallMs / 1000).toFixed(1)} s by the clock`,
  );
  const sum = parts.reduce((all, { ms }) => all + ms, 0);
  const longest = Math.max(...parts.map(({ ms }) => ms));
  told('all shares together ÷ one process, processor time', sum / whole.ms);
  told('the longest share ÷ one process, processor time', longest / whole.ms);
  const ids = (answer: string): string[] =>
    [...(JSON.parse(answer) as { findings: { file: string; rule: string; line: number }[] }).findings].map(
      ({ file, rule, line }) => `${file}:${line} ${rule}`,
    );
  const together = [...new Set(parts.flatMap(({ answer }) => ids(answer)))].sort();
  const alone = [...new Set(ids(whole.answer))].sort();
  say(
    `  findings of the shares together ${together.length}, of the whole ${alone.length}: ${together.join() === alone.join() ? 'the same' : 'NOT THE SAME'}`,
  );
  say(`  status of the whole ${whole.status}, worst of the shares ${Math.max(...parts.map(({ status }) => status ?? 2))}`);
  await pushes(clones, remote);
}

function cloneOf(remote: string): string {
  const clone = path.join(top, 'clone-whole');
  git(top, ['clone', '--quiet', remote, clone]);
  return clone;
}

/** Each adds a component to a shell of its own and pushes; who comes second rebases and pushes again. */
async function pushes(clones: readonly string[], remote: string): Promise<void> {
  const before = Number(git(remote, ['rev-list', '--count', 'main']));
  const tries = await Promise.all(
    clones.map(async (clone, n) => {
      for (const [key, value] of Object.entries({ name: 'F. Reed', email: 'f@example.org' }))
        git(clone, ['config', `user.${key}`, value]);
      const entry = [
        'add',
        'component',
        '--shell',
        fleetShell(n),
        '--id',
        'C-NEW',
        '--name',
        'shelf',
        '--mass',
        '4 lb',
        '--at',
        '30 in, 0 in, 30 in',
      ];
      await runBeside([...entry, '--stage', 'finished', '--basis', 'weighed'], clone);
      git(clone, ['commit', '--quiet', '--all', '--message', `Weigh a shelf in ${fleetShell(n)}`]);
      return pushed(clone);
    }),
  );
  const after = Number(git(remote, ['rev-list', '--count', 'main']));
  say(`  pushes: ${after - before} of ${clones.length} commits arrived, tries ${tries.join(', ')}`);
  const held = clones.filter((_, n) => git(remote, ['show', `main:shells/${fleetShell(n)}/components.yaml`]).includes('C-NEW'));
  say(`  entries on the remote: ${held.length} of ${clones.length}`);
}

async function pushed(clone: string): Promise<number> {
  for (let tries = 1; ; tries++) {
    const status = await new Promise<number | null>((resolve) =>
      spawn('git', ['push', '--quiet', 'origin', 'main'], { cwd: clone, stdio: 'ignore' }).on('close', resolve),
    );
    if (status === 0) return tries;
    if (tries > 20) throw new Error(`${clone} could not push`);
    git(clone, ['pull', '--quiet', '--rebase', 'origin', 'main']);
  }
}
