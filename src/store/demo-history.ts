import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { type SimpleGit, simpleGit } from 'simple-git';
import { parse } from 'yaml';
import { CannotDo } from '../cannot.js';
import { cutRecords, type Piece } from './demo-cut.js';
import { DEMO_MARKER } from './demo-place.js';

/** demo-data/make/history.yaml: how the store came about. */
interface Plan {
  readonly people: Readonly<Record<string, { readonly name: string; readonly email: string }>>;
  readonly commits: readonly {
    /** ISO 8601 with offset: author’s and committer’s date. */
    readonly date: string;
    readonly by: string;
    readonly message: string;
    readonly tag?: { readonly name: string; readonly message: string };
  }[];
  readonly stages: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly files: Readonly<Record<string, string>>;
  readonly enters: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** Files whose records were there from a day on, each without its `date` until that date. */
  readonly planned: Readonly<Record<string, string>>;
  readonly earlier: readonly Earlier[];
}

/** What a record said before a day: other words, or some of its lines not yet there. */
interface Earlier {
  readonly file: string;
  readonly id: string;
  readonly until: string;
  readonly now?: string;
  readonly was?: string;
  /** Lines of the record, counted from 1. */
  readonly lines?: readonly number[];
}

const PLAN_FILE = 'make/history.yaml';
/** Beside the store in its folder, and no part of it. */
const LEFT_OUT = new Set(['make', 'books', '.git']);

/**
 * Lays the demo store down in `to` as a Git repository whose commits follow the dates of its records. The last commit is `from`
 * byte for byte; hashes are the same every time. Needs nothing of the user’s Git settings.
 * Throws {@link CannotDo} where `to` has anything in it, or where `from` is not the demo store.
 */
export async function layDemoHistory(from: string, to: string, progress: (text: string) => void = () => {}): Promise<void> {
  const plan = await readPlan(from);
  const store = await readStore(from);
  const entries = [...store].map((file) => entryOf(file, plan)).sort((a, b) => (a.name < b.name ? -1 : 1));
  checkEarlier(plan, entries);
  await mkdir(to, { recursive: true });
  if ((await readdir(to)).some((name) => name !== DEMO_MARKER))
    throw new CannotDo(`${to} is not empty: nothing was written. Name a new or an empty folder.`);
  const git = gitIn(to);
  await git.raw(['init', '--quiet', '--initial-branch=main', '--template=']);
  await git.raw(['config', 'core.autocrlf', 'false']);
  // Neither the mark of the demo's own folder nor its printed books is a record.
  await mkdir(path.join(to, '.git', 'info'), { recursive: true });
  await writeFile(path.join(to, '.git', 'info', 'exclude'), `/${DEMO_MARKER}\n/books/\n`);
  const before = new Map<string, Buffer>();
  for (const [i, commit] of plan.commits.entries()) {
    progress(`Commit ${i + 1} of ${plan.commits.length}: ${commit.message}`);
    await layState(to, stateOn(entries, commit.date.slice(0, 10)), before);
    await commitAll(git, plan, commit);
  }
}

type Commit = Plan['commits'][number];

async function readPlan(from: string): Promise<Plan> {
  try {
    return parse(await readFile(path.join(from, PLAN_FILE), 'utf8')) as Plan;
  } catch {
    throw new CannotDo(`${from} is not the demo store: it has no ${PLAN_FILE} that can be read.`);
  }
}

async function readStore(from: string, inside = ''): Promise<ReadonlyMap<string, Buffer>> {
  const files = new Map<string, Buffer>();
  for (const entry of await readdir(path.join(from, inside), { withFileTypes: true })) {
    if (inside === '' && LEFT_OUT.has(entry.name)) continue;
    const name = inside === '' ? entry.name : `${inside}/${entry.name}`;
    if (entry.isDirectory()) for (const [sub, bytes] of await readStore(from, name)) files.set(sub, bytes);
    else files.set(name, await readFile(path.join(from, name)));
  }
  return files;
}

/** A file with the day on which each part of it came in. */
interface Entry {
  readonly name: string;
  readonly pieces: readonly (Piece & { readonly enters: string; readonly earlier: readonly Earlier[] })[];
  readonly whole: Buffer;
}

function entryOf([name, whole]: readonly [string, Buffer], plan: Plan): Entry {
  const fallback = Object.entries(plan.files).find(([pattern]) => fits(pattern, name))?.[1] ?? '';
  if (!name.endsWith('.yaml')) return { name, whole, pieces: [] };
  const shell = /^shells\/([^/]+)\//u.exec(name)?.[1] ?? '';
  const pieces = cutRecords(whole.toString('utf8')).map((piece) => {
    const earlier = plan.earlier.filter((one) => one.file === name && one.id === piece.record?.id);
    const stage = plan.stages[shell]?.[String(piece.record?.typed.stage)];
    const own = piece.record && dayOf(piece.record.typed, earlier.length > 0);
    const given = plan.enters[name]?.[piece.record?.id ?? ''] ?? plan.planned[name];
    return { ...piece, earlier: [...earlier, ...undatedUntil(piece, name, plan)], enters: given ?? own ?? stage ?? fallback };
  });
  return { name, whole, pieces };
}

/** A planned record’s date is the last thing that it got. */
function undatedUntil(piece: Piece, file: string, plan: Plan): readonly Earlier[] {
  const typed = piece.record?.typed.date;
  if (plan.planned[file] === undefined || typeof typed !== 'string') return [];
  const now = new RegExp(`,\\s+date: ${typed}(?=,)`, 'u').exec(piece.text)?.[0];
  return now === undefined ? [] : [{ file, id: piece.record?.id ?? '', until: typed, now, was: '' }];
}

const fits = (pattern: string, name: string): boolean =>
  new RegExp(
    `^${pattern
      .split('*')
      .map((part) => part.replace(/[.+?^${}()|[\]\\]/gu, '\\$&'))
      .join('[^/]*')}$`,
    'u',
  ).test(name);

type Typed = Readonly<Record<string, unknown>>;

/** The last day that a record speaks of, as it stood when it was whole; its first where earlier versions of it are told. */
function dayOf(typed: Typed, first: boolean): string | undefined {
  const dates = [typed.date, typed.taken, typed.raised, (typed.fixing as Typed | undefined)?.applied];
  const later = [typed.closed, ...((typed.inspections as readonly Typed[] | undefined) ?? []).map((one) => one.date)];
  const known = (first ? dates : [...dates, ...later])
    .filter((one): one is string => typeof one === 'string')
    .map((one) => one.slice(0, 10));
  return known.sort().at(-1);
}

function checkEarlier(plan: Plan, entries: readonly Entry[]): void {
  for (const one of plan.earlier) {
    const piece = entries.find(({ name }) => name === one.file)?.pieces.find(({ record }) => record?.id === one.id);
    if (!piece) throw new CannotDo(`${PLAN_FILE} speaks of ${one.id} in ${one.file}, where it is not.`);
    if (one.now !== undefined && piece.text.split(one.now).length !== 2) {
      throw new CannotDo(`${PLAN_FILE} expects \`${one.now}\` once in ${one.id} of ${one.file}.`);
    }
  }
}

/** The store as it stood at the end of a day. A picture comes in with the line that names it. */
function stateOn(entries: readonly Entry[], day: string): ReadonlyMap<string, Buffer> {
  const state = new Map<string, Buffer>();
  const pictures = new Set<string>();
  for (const { name, pieces } of entries) {
    const present = pieces.filter((piece) =>
      piece.record === undefined && piece.list >= 0 ? false : piece.enters !== '' && piece.enters <= day,
    );
    if (present.length === 0) continue;
    const lists = new Set(present.map((piece) => piece.list));
    const text = pieces
      .filter((piece) => present.includes(piece) || (piece.record === undefined && lists.has(piece.list)))
      .map((piece) => textOn(piece, day))
      .join('');
    state.set(name, Buffer.from(text, 'utf8'));
    const folder = path.posix.dirname(name);
    for (const { record } of present)
      if (record?.typed.file !== undefined) pictures.add(`${folder}/${String(record.typed.file)}`);
  }
  for (const { name, whole } of entries) if (pictures.has(name)) state.set(name, whole);
  return state;
}

function textOn(piece: Entry['pieces'][number], day: string): string {
  return piece.earlier
    .filter((one) => day < one.until)
    .reduce((text, one) => {
      if (one.now !== undefined) return text.replace(one.now, () => one.was ?? '');
      const lines = text.split(/(?<=\n)/u);
      const first = lines.findIndex((line) => /^\s*- /u.test(line));
      return lines.filter((_, i) => !one.lines?.includes(i - first + 1)).join('');
    }, piece.text);
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

const ENVIRONMENT = [
  'PATH',
  ...['AUTHOR', 'COMMITTER'].flatMap((who) => [`GIT_${who}_NAME`, `GIT_${who}_EMAIL`, `GIT_${who}_DATE`]),
];

/** Git with nothing of the user’s own: no settings, no hooks, no signing. */
function gitIn(dir: string): SimpleGit {
  const config = [
    'core.autocrlf=false',
    'core.hooksPath=/dev/null',
    'core.fsmonitor=false',
    'commit.gpgsign=false',
    'tag.gpgsign=false',
    'gc.auto=0',
  ];
  return simpleGit({
    baseDir: dir,
    config,
    // Who and when are told to Git through its environment, and nothing else is.
    allowEnvironment: ENVIRONMENT,
    unsafe: { allowUnsafeHooksPath: true, allowUnsafeFsMonitor: true, allowUnsafeTemplateDir: true, allowUnsafeGpgProgram: true },
  });
}

async function commitAll(git: SimpleGit, plan: Plan, commit: Commit): Promise<void> {
  const person = plan.people[commit.by];
  if (!person) throw new CannotDo(`${PLAN_FILE} names no person ${commit.by}.`);
  const asPerson = git.env({
    PATH: process.env.PATH ?? '',
    GIT_AUTHOR_NAME: person.name,
    GIT_AUTHOR_EMAIL: person.email,
    GIT_AUTHOR_DATE: commit.date,
    GIT_COMMITTER_NAME: person.name,
    GIT_COMMITTER_EMAIL: person.email,
    GIT_COMMITTER_DATE: commit.date,
  });
  await asPerson.raw(['add', '--all', '--', '.']);
  await asPerson.raw([
    'commit',
    '--quiet',
    '--allow-empty',
    '--no-verify',
    '--no-gpg-sign',
    '--cleanup=verbatim',
    '-m',
    commit.message,
  ]);
  if (commit.tag) await asPerson.raw(['tag', '--annotate', '--no-sign', commit.tag.name, '-m', commit.tag.message]);
}
