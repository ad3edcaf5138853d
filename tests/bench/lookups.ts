/**
 * What a question at the prompt costs on records that have not changed, beside starting Node itself, in processor time, which other work on
 * the machine does not spend: `npm run bench`.
 */
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { git } from './ledger-store.js';
import { node, say, told } from './tell.js';

const ROUNDS = 7;
/** After these V8 has learnt what a command runs. */
const LEARNING_RUNS = 4;
const GOAL = 3;
/** What `shellbook` starts. */
const STARTED = fileURLToPath(new URL('../../dist/shellbook.cjs', import.meta.url));

/** Says last what the process has spent, µs. */
const SPENT = `process.on('exit', () => {
  const { userCPUTime, systemCPUTime } = process.resourceUsage();
  require('node:fs').writeSync(2, '\\nspent ' + (userCPUTime + systemCPUTime));
});`;
/** Nothing is kept while a file is younger than a coarse clock's tick. */
const SETTLED_MS = 5000;

const QUESTIONS: Readonly<Record<string, readonly string[]>> = {
  where: ['where', 'OV-021', 'DC-01'],
  'where, a question': ['where', 'OV-021', 'fuses'],
  behind: ['behind', 'OV-021', 'AP-11'],
  near: ['near', 'OV-021', '180in,-10in,0in'],
  isolate: ['isolate', 'OV-021', 'DC-01'],
  load: ['load', 'OV-021', 'DC-01/S1', '--add', '24W'],
  weights: ['weights', 'OV-021'],
  takeoff: ['takeoff', 'OV-021'],
  release: ['release', 'OV-021'],
  progress: ['progress', 'OV-021'],
  overlay: ['overlay', 'OV-021', 'PH-011'],
  locate: ['locate', 'OV-021', 'PH-011', '809,577', '--on', 'CB-10'],
  check: ['check', 'OV-021'],
  list: ['list'],
  trace: ['trace', 'heat', 'H-12'],
};

const folder = mkdtempSync(path.join(os.tmpdir(), 'shellbook-lookups-'));
try {
  cpSync('demo-data', folder, { recursive: true });
  git(folder, ['init', '--quiet']);
  git(folder, ['add', '.']);
  git(folder, ['-c', 'user.name=B', '-c', 'user.email=b@example.org', 'commit', '--quiet', '-m', 'The demo']);
  await wait(SETTLED_MS);
  const watch = path.join(folder, 'spent.cjs');
  writeFileSync(watch, SPENT);
  const spentMs = (args: readonly string[]): number =>
    Number(/spent (\d+)$/u.exec(node(['--require', watch, ...args]))?.[1]) / 1000;
  const works = new Map<string, readonly string[]>([
    ['node -e 0', ['-e', '0']],
    ...Object.entries(QUESTIONS).map(([name, args]) => [name, [STARTED, ...args, '--store', folder, '--quiet']] as const),
  ]);
  for (let run = 0; run < LEARNING_RUNS; run++) for (const args of works.values()) spentMs(args);
  const spent = new Map([...works.keys()].map((name) => [name, [] as number[]] as const));
  for (let round = 0; round < ROUNDS; round++) for (const [name, args] of works) spent.get(name)?.push(spentMs(args));
  const median = (name: string): number => (spent.get(name) ?? []).sort((a, b) => a - b)[Math.floor(ROUNDS / 2)] as number;
  say(`\nQuestions on unchanged records, each in a process of its own, processor time, median of ${ROUNDS}`);
  for (const name of works.keys()) say(`  ${name.padEnd(32)}${median(name).toFixed(0).padStart(7)} ms`);
  for (const name of Object.keys(QUESTIONS)) told(`${name} ÷ node -e 0`, median(name) / median('node -e 0'), GOAL);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
