/**
 * What a question at the prompt costs on records that have not changed, beside starting Node itself, in processor time, which other work on
 * the machine does not spend: `npm run bench`.
 */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { git } from './ledger-store.js';
import { STARTED, spentEach, spentIn } from './spent.js';
import { say, told } from './tell.js';

const ROUNDS = 7;
const GOAL = 3;
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
  const works = new Map<string, readonly string[]>([
    ['node -e 0', ['-e', '0']],
    ...Object.entries(QUESTIONS).map(([name, args]) => [name, [STARTED, ...args, '--store', folder, '--quiet']] as const),
  ]);
  const spent = spentEach(works, spentIn(folder), ROUNDS);
  const median = (name: string): number => spent.get(name) ?? Number.NaN;
  say(`\nQuestions on unchanged records, each in a process of its own, processor time, median of ${ROUNDS}`);
  for (const name of works.keys()) say(`  ${name.padEnd(32)}${median(name).toFixed(0).padStart(7)} ms`);
  for (const name of Object.keys(QUESTIONS)) told(`${name} ÷ node -e 0`, median(name) / median('node -e 0'), GOAL);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
