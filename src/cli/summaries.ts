import { createHash } from 'node:crypto';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { FileIds } from '../store/file-ids.js';
import { CacheDir } from '../store/kept.js';
import type { KeptAt } from '../store/kept-answers.js';
import { looksOfFiles } from '../store/looks.js';
import { Sections } from '../store/sections.js';
import type { Context } from './context.js';
import { programFiles } from './program-files.js';
import type { Summary } from './summary.js';
import type { ShellSummary, WorkerShare } from './summary-worker.js';

type Wanted = WorkerShare['shells'][number];

/** What is kept of one shell: its summary, and what else the summary holds for. */
interface KeptSummary {
  readonly summary: Summary;
  /** Of every other shell’s files, where the rules looked there. */
  readonly around?: string;
}

const isKept = (found: unknown): found is KeptSummary => {
  const { summary } = (found ?? {}) as Partial<KeptSummary>;
  return (
    typeof summary?.title === 'string' &&
    typeof summary.built === 'object' &&
    typeof summary.counts === 'object' &&
    Array.isArray(summary.progress?.lapsed)
  );
};

/** Old answers are of use to nobody who does not go back to the same commit. */
const MOST_KEPT = 5000;
const SAVED_EVERY = 250;
const SECTION = 'summaries';

/**
 * What `list` says of each shell of a store: from what was kept where nothing that it depends on has changed, else computed, on several
 * threads where there is much to do. Keyed by contents: by Git’s ids where Git has them, so that it is right on a dirty tree too.
 */
export async function summaries(root: string, files: FileIds, context: Context): Promise<ReadonlyMap<string, Summary>> {
  const place = placeOf(files);
  const kept = keptIn(place);
  const keys = keysOf(files);
  const found = new Map<string, Summary>();
  const missing: Wanted[] = [];
  const names = [...keys.keys()];
  // Its own files are in a summary's key.
  const around = digest([...keys.values()]);
  for (const shell of names) {
    const one = kept.get(keys.get(shell) as string);
    if (isKept(one) && (one.around === undefined || one.around === around)) found.set(shell, one.summary);
    else missing.push(wanted(shell, files));
  }
  if (missing.length > 0) {
    const fresh = new Map<string, KeptSummary>();
    await compute(root, missing, async (shell, summary) => {
      found.set(shell, summary);
      fresh.set(keys.get(shell) as string, { summary, ...(summary.lookedAround ? { around } : {}) });
      context.progress(`Judged ${fresh.size} of ${missing.length} shells`);
      if (fresh.size % SAVED_EVERY === 0) await keepIn(place, kept, fresh, names.length);
    });
    await keepIn(place, kept, fresh, names.length);
  }
  return new Map(names.flatMap((shell) => (found.has(shell) ? [[shell, found.get(shell) as Summary] as const] : [])));
}

/** All summaries of a store are in one file: a file each takes longer to open than to read. */
const placeOf = (files: FileIds): KeptAt => ({
  room: CacheDir.in(files.gitDir, 'list'),
  name: 'summaries',
  stamp: digest([process.version, ...looksOfFiles(programFiles()).lines]),
  settled: true,
});

function keptIn(place: KeptAt): ReadonlyMap<string, unknown> {
  const found = Sections.open(place).get(SECTION);
  return found instanceof Map ? found : new Map();
}

/** The newest, as many as the store has twice over or more. */
async function keepIn(
  place: KeptAt,
  kept: ReadonlyMap<string, unknown>,
  fresh: ReadonlyMap<string, KeptSummary>,
  shells: number,
): Promise<void> {
  const sections = Sections.open(place);
  const all = [...kept, ...fresh];
  sections.put(SECTION, new Map(all.slice(-Math.max(MOST_KEPT, 2 * shells))));
  await sections.save();
}

function wanted(shell: string, { uncommitted }: FileIds): Wanted {
  if (uncommitted === undefined) return { shell };
  return { shell, uncommitted: uncommitted.filter((file) => isOf(shell, file)) };
}

const isOf = (shell: string, file: string): boolean => !file.startsWith('shells/') || file.startsWith(`shells/${shell}/`);

/** For each shell: everything that its summary depends on by itself, as one hash. */
function keysOf({ ids, uncommitted }: FileIds): ReadonlyMap<string, string> {
  const shared: string[] = [];
  const own = new Map<string, string[]>();
  const dirty = new Set(uncommitted ?? []);
  for (const [file, id] of [...ids].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const line = `${file} ${id}${dirty.has(file) ? ' uncommitted' : ''}`;
    const [, shell, rest] = /^shells\/([^/]+)\/(.+)$/su.exec(file) ?? [];
    if (shell === undefined || rest === undefined) shared.push(line);
    else own.set(shell, [...(own.get(shell) ?? []), line]);
  }
  for (const file of dirty) if (!ids.has(file)) own.get(/^shells\/([^/]+)\//u.exec(file)?.[1] ?? '')?.push(`${file} gone`);
  const base = digest(shared);
  return new Map([...own].map(([shell, lines]) => [shell, digest([base, shell, ...lines])]));
}

const digest = (lines: readonly string[]): string => createHash('sha256').update(lines.join('\n')).digest('hex');

/** Fewer than this are judged sooner than another thread has started. */
const WORTH_A_THREAD = 16;

async function compute(
  root: string,
  missing: readonly Wanted[],
  take: (shell: string, summary: Summary) => Promise<void>,
): Promise<void> {
  const threads = Math.min(availableParallelism(), Math.floor(missing.length / WORTH_A_THREAD));
  // From its sources (tests) the program has no compiled worker to start.
  if (threads < 2 || import.meta.url.endsWith('.ts')) return computeHere(root, missing, take);
  const shares = Array.from({ length: threads }, (_, i) => missing.filter((_one, k) => k % threads === i));
  await Promise.all(shares.map((shells) => inThread({ root, shells }, take)));
}

async function computeHere(
  root: string,
  missing: readonly Wanted[],
  take: (shell: string, summary: Summary) => Promise<void>,
): Promise<void> {
  const [{ loadStore }, { readStoreText }, { summaryOf }] = await Promise.all([
    import('../model/load.js'),
    import('../store/read.js'),
    import('./summary.js'),
  ]);
  const loaded = loadStore(await readStoreText(root));
  for (const { shell, uncommitted } of missing) {
    const summary = summaryOf(loaded, shell, uncommitted);
    if (summary) await take(shell, summary);
  }
}

function inThread(share: WorkerShare, take: (shell: string, summary: Summary) => Promise<void>): Promise<void> {
  return new Promise((resolve, reject) => {
    const taken: Promise<void>[] = [];
    const worker = new Worker(new URL('../cli/summary-worker.js', import.meta.url), { workerData: share });
    worker.on('message', (judged: readonly ShellSummary[]) => {
      for (const { shell, summary } of judged) if (summary) taken.push(take(shell, summary));
    });
    worker.on('error', reject);
    worker.on('exit', () => void Promise.all(taken).then(() => resolve(), reject));
  });
}
