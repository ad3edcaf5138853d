/** What `check` costs after one small edit, beside the first check of all and beside asking again: part of `npm run bench`. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { git } from './ledger-store.js';
import { median } from './measure.js';
import { STARTED, spentIn } from './spent.js';
import { say, told } from './tell.js';

const ROUNDS = 3;
/** Nothing is kept of a whole answer while a file is younger than a coarse clock's tick. */
const SETTLED_MS = 5000;
const SHELL = 'OV-021';
const NAMES = [
  ['cold', 'check of all'],
  ['test', 'check, one test changed'],
  ['member', 'check, one member changed'],
  ['warm', 'check, asked again'],
] as const;

const folder = mkdtempSync(path.join(os.tmpdir(), 'shellbook-edited-'));
try {
  cpSync('demo-data', folder, { recursive: true });
  git(folder, ['init', '--quiet']);
  git(folder, ['add', '.']);
  git(folder, ['-c', 'user.name=B', '-c', 'user.email=b@example.org', 'commit', '--quiet', '-m', 'The demo']);
  const spentMs = spentIn(folder);
  const check = (): number => spentMs([STARTED, 'check', SHELL, '--store', folder, '--quiet']);
  const edit = (file: string, from: RegExp, to: string): void => {
    const name = path.join(folder, 'shells', SHELL, file);
    const text = readFileSync(name, 'utf8');
    const now = text.replace(from, to);
    if (now === text) throw new Error(`${file} has nothing like ${from}`);
    writeFileSync(name, now);
  };
  const times = { cold: [] as number[], test: [] as number[], member: [] as number[], warm: [] as number[] };
  check();
  for (let round = 0; round < ROUNDS; round++) {
    rmSync(path.join(folder, '.git/shellbook'), { recursive: true });
    times.cold.push(check());
    edit('tests.yaml', /end: \d+ psi/u, `end: ${81 + round} psi`);
    times.test.push(check());
    edit('members-walls.yaml', /cut_length: \S+/u, `cut_length: ${80 + round}`);
    times.member.push(check());
    await wait(SETTLED_MS);
    check();
    times.warm.push(check());
  }
  const of = (name: keyof typeof times): number => median(times[name]);
  say(`\nThe demo’s ${SHELL}, each in a process of its own, processor time, median of ${ROUNDS}`);
  for (const [name, what] of NAMES) say(`  ${what.padEnd(32)}${of(name).toFixed(0).padStart(7)} ms`);
  told('check after a change of a test ÷ check of all', of('test') / of('cold'));
  told('check after a change of a member ÷ check of all', of('member') / of('cold'));
  told('check after a change of a test ÷ check, asked again', of('test') / of('warm'));
} finally {
  rmSync(folder, { recursive: true, force: true });
}
