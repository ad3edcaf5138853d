import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { devNull } from 'node:os';
import path from 'node:path';

import { fileURLToPath } from 'node:url';

import { parse } from 'yaml';
import { dayOf } from '../../quantity/day.js';
import { MadeRepository } from '../../store/git/new.js';
import { UserError } from '../../user-error.js';
import { PACKAGE_FOLDER } from '../package-folder.js';
import { DEMO_MARKER } from './place.js';
import { type DemoPlan, PLAN_FILE, statesOf } from './plan.js';

/** Closes a shell of the store laid down so far, as the person and at the time that Git is told in `env`. */
export type Closing = (root: string, shell: string, env: Readonly<Record<string, string>>) => Promise<void>;

/** Git without the user's own settings. */
const ALONE = { GIT_CONFIG_GLOBAL: devNull, GIT_CONFIG_NOSYSTEM: '1' };

/** Beside the store in its folder, and no part of it. */
const LEFT_OUT = new Set(['books', '.git']);

/**
 * Lays the demo store down in `to` as a Git repository whose commits follow the dates of its records. The last commit is `from`
 * byte for byte; hashes are the same every time. Needs nothing of the user’s Git settings.
 * Throws {@link UserError} where `to` has anything in it, or where `from` is not the demo store.
 */
export async function layDemoHistory(
  from: string,
  to: string,
  close: Closing,
  progress: (text: string) => void = () => {},
): Promise<void> {
  const plan = await readDemoPlan();
  const store = await readDemoStore(from);
  const stateOn = statesOf(plan, store);
  await mkdir(to, { recursive: true });
  if ((await readdir(to)).some((name) => name !== DEMO_MARKER))
    throw new UserError(`${to} is not empty: nothing was written. Name a new or an empty folder.`);
  const repository = await MadeRepository.start(to);
  // Neither the mark of the demo's own folder nor its printed books is a record.
  await mkdir(path.join(to, '.git', 'info'), { recursive: true });
  await writeFile(path.join(to, '.git', 'info', 'exclude'), `/${DEMO_MARKER}\n/books/\n`);
  const before = new Map<string, Buffer>();
  for (const [i, commit] of plan.commits.entries()) {
    progress(`Commit ${i + 1} of ${plan.commits.length}: ${commit.message}`);
    await layState(to, stateOn(dayOf(commit.date)), before);
    const as = asPerson(plan, commit);
    await repository.commitAll(as, commit.message);
    if (commit.closes !== undefined) await close(to, commit.closes, { ...as, ...ALONE });
  }
}

type Commit = DemoPlan['commits'][number];

export const readDemoPlan = async (): Promise<DemoPlan> =>
  parse(await readFile(fileURLToPath(new URL(PLAN_FILE, PACKAGE_FOLDER)), 'utf8')) as DemoPlan;

/** Every file of the demo store by its path. Throws {@link UserError} where `from` is no store. */
export async function readDemoStore(from: string): Promise<ReadonlyMap<string, Buffer>> {
  const store = await filesIn(from);
  if (!store.has('shop.yaml')) throw new UserError(`${from} is not the demo store: it has no shop.yaml.`);
  return store;
}

async function filesIn(from: string, inside = ''): Promise<ReadonlyMap<string, Buffer>> {
  const files = new Map<string, Buffer>();
  for (const entry of await readdir(path.join(from, inside), { withFileTypes: true })) {
    if (inside === '' && LEFT_OUT.has(entry.name)) continue;
    const name = inside === '' ? entry.name : `${inside}/${entry.name}`;
    if (entry.isDirectory()) for (const [sub, bytes] of await filesIn(from, name)) files.set(sub, bytes);
    else files.set(name, await readFile(path.join(from, name)));
  }
  return files;
}

/** Writes what changed since the state before, and takes away what is no longer there. */
async function layState(to: string, state: ReadonlyMap<string, Buffer>, before: Map<string, Buffer>): Promise<void> {
  for (const name of [...before.keys()].filter((one) => !state.has(one))) {
    await rm(path.join(to, name));
    before.delete(name);
  }
  for (const [name, bytes] of state) {
    if (before.get(name)?.equals(bytes)) continue;
    await mkdir(path.dirname(path.join(to, name)), { recursive: true });
    await writeFile(path.join(to, name), bytes);
    before.set(name, bytes);
  }
}

/** Who and when, for Git. */
function asPerson(plan: DemoPlan, commit: Commit): Readonly<Record<string, string>> {
  const person = plan.people[commit.by];
  if (!person) throw new UserError(`${PLAN_FILE} names no person ${commit.by}.`);
  return Object.fromEntries(
    ['AUTHOR', 'COMMITTER'].flatMap((who) => [
      [`GIT_${who}_NAME`, person.name],
      [`GIT_${who}_EMAIL`, person.email],
      [`GIT_${who}_DATE`, commit.date],
    ]),
  );
}
