/** How long the ledger's answers take beside the Git commands that they rest on: `npm run bench`. No test hangs on these figures. */
import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { changesBetween } from '../../src/cli/changes.js';
import { historyOf } from '../../src/cli/record-history.js';
import { git, layRepository, manyCommits, manyShells } from './ledger-store.js';
import { measureWaiting } from './measure.js';
import { node, ratio, say, tell, told } from './tell.js';

const COMMITS = 5000;
const SHELLS = 1000;
const ROUNDS = 5;

const top = mkdtempSync(path.join(os.tmpdir(), 'shellbook-ledger-'));
try {
  await manyCommitsOfOne(path.join(top, 'commits'));
  await manyShellsOfOne(path.join(top, 'shells'));
} finally {
  rmSync(top, { recursive: true, force: true });
}

async function manyCommitsOfOne(dir: string): Promise<void> {
  layRepository(dir, manyCommits(COMMITS));
  const [first, last] = [git(dir, ['rev-list', '--max-parents=0', 'HEAD']).trim(), git(dir, ['rev-parse', 'HEAD']).trim()];
  const blobs = [
    ...new Set([...git(dir, ['log', '--raw', '--no-abbrev', '--format=']).matchAll(/\b[0-9a-f]{40}\b/gu)].map((one) => one[0])),
  ];
  const wanted = blobs.filter((blob) => !/^0+$/u.test(blob)).join('\n');
  const times = await measureWaiting(
    {
      'git diff-tree, git blame': () => {
        git(dir, ['diff-tree', '-r', '--raw', first, last]);
        git(dir, ['blame', '--porcelain', `${first}..${last}`, '--', 'shells/B-1/welds.yaml']);
      },
      compare: () => changesBetween(dir, first, last, 'B-1'),
      'git log --raw, git cat-file': () => {
        git(dir, ['log', '--raw', '--no-abbrev', '--', 'shells/B-1', 'library', 'shop.yaml']);
        git(dir, ['cat-file', '--batch'], wanted);
      },
      'history of one record': () => historyOf(dir, 'B-1', 'W-37'),
    },
    ROUNDS,
  );
  tell(`One shell of ${COMMITS} commits, in one process, median of ${ROUNDS}`, times);
  ratio(times, 'compare', 'git diff-tree, git blame');
  ratio(times, 'history of one record', 'git log --raw, git cat-file');
}

async function manyShellsOfOne(dir: string): Promise<void> {
  layRepository(dir, [manyShells(SHELLS)]);
  const started = performance.now();
  node(['dist/main.js', 'list', '--store', dir, '--quiet']);
  say('');
  told(`list of ${SHELLS} small shells, cold, once`, (performance.now() - started) / 1000, 2, ' s');
  const times = await measureWaiting(
    {
      'node itself': () => node(['-e', '']),
      'git grep': () => git(dir, ['grep', '-n', 'H-12']),
      'list, warm': () => node(['dist/main.js', 'list', '--store', dir, '--quiet']),
      'trace a heat of 40 shells': () => node(['dist/main.js', 'trace', 'heat', 'H-12', '--store', dir, '--quiet']),
      'trace a welder of all': () => node(['dist/main.js', 'trace', 'welder', 'K7', '--store', dir, '--quiet']),
    },
    ROUNDS,
  );
  tell(`${SHELLS} small shells, each in a process of its own, median of ${ROUNDS}`, times);
  ratio(times, 'trace a heat of 40 shells', 'git grep', 2);
  ratio(times, 'node itself', 'git grep');
  ratio(times, 'trace a heat of 40 shells', 'node itself');
}
