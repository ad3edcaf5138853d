/** How long a question at the prompt takes on records that have not changed, beside starting Node itself: `npm run bench`. */
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { git } from './ledger-store.js';
import { measure } from './measure.js';
import { BUILT, node, ratio, say, tell } from './tell.js';

const ROUNDS = 7;
/** Nothing is kept while a file is younger than a coarse clock's tick. */
const SETTLED_MS = 5000;

const QUESTIONS: Readonly<Record<string, readonly string[]>> = {
  where: ['where', 'OV-021', 'DC-01'],
  'where, a question': ['where', 'OV-021', 'fuses'],
  behind: ['behind', 'OV-021', 'AP-11'],
  near: ['near', 'OV-021', '180in,-10in,0in'],
  isolate: ['isolate', 'OV-021', 'DC-01'],
  weights: ['weights', 'OV-021'],
  release: ['release', 'OV-021'],
};

const folder = mkdtempSync(path.join(os.tmpdir(), 'shellbook-lookups-'));
try {
  cpSync('demo-data', folder, { recursive: true });
  git(folder, ['init', '--quiet']);
  git(folder, ['add', '.']);
  git(folder, ['-c', 'user.name=B', '-c', 'user.email=b@example.org', 'commit', '--quiet', '-m', 'The demo']);
  await wait(SETTLED_MS);
  const ask = (args: readonly string[]) => node([BUILT, ...args, '--store', folder, '--quiet']);
  // The first one computes and keeps.
  for (const args of Object.values(QUESTIONS)) ask(args);
  const works = Object.fromEntries(Object.entries(QUESTIONS).map(([name, args]) => [name, () => ask(args)]));
  const times = measure({ 'node -e 0': () => node(['-e', '0']), ...works }, ROUNDS);
  say('');
  tell(`Questions on unchanged records, each in a process of its own, median of ${ROUNDS}`, times);
  for (const name of Object.keys(QUESTIONS)) ratio(times, name, 'node -e 0', 3);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
