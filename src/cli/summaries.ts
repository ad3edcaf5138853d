import { createHash } from 'node:crypto';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { FileIds } from '../store/file-ids.js';
import { CacheDir, CacheEntries } from '../store/kept.js';
import { looksOfFiles } from '../store/looks.js';
import type { Context } from './context.js';
import { programFiles } from './program-files.js';
import type { Summary } from './summary.js';
import type { WorkerShare } from './summary-worker.js';

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

/**
 * What `list` says of each shell of a store: from what was kept where nothing that it depends on has changed, else computed, on several
 * threads where there is much to do. Keyed by contents: by Git’s ids where Git has them, so that it is right on a dirty tree too.
 */
export async function summaries(root: string, files: FileIds, context: Context): Promise<ReadonlyMap<string, Summary>> {
  const kept = new CacheEntries<KeptSummary>(CacheDir.in(files.gitDir, 'list'), isKept);
  const keys = keysOf(files);
  const found = new Map<string, Summary>();
  const missing: Wanted[] = [];
  const around = (shell: string): string => digest([...keys].filter(([other]) => other !== shell).map(([, key]) => key));
  const names = [...keys.keys()];
  const AT_ONCE = 64;
  for (let i = 0; i < names.length; i += AT_ONCE) {
    await Promise.all(
      names.slice(i, i + AT_ONCE).map(async (shell) => {
        const one = await kept.get(keys.get(shell) as string);
        if (one && (one.around === undefined || one.around === around(shell))) found.set(shell, one.summary);
        else missing.push(wanted(shell, files));
      }),
    );
  }
  let done = 0;
  const take = async (shell: string, summary: Summary): Promise<void> => {
    found.set(shell, summary);
    context.progress(`Judged ${++done} of ${missing.length} shells`);
    await kept.put(keys.get(shell) as string, { summary, ...(summary.lookedAround ? { around: around(shell) } : {}) });
  };
  if (missing.length > 0) {
    await compute(root, missing, take);
    await kept.thin(Math.max(MOST_KEPT, 2 * names.length));
  }
  return new Map(names.flatMap((shell) => (found.has(shell) ? [[shell, found.get(shell) as Summary] as const] : [])));
}

function wanted(shell: string, { uncommitted }: FileIds): Wanted {
  if (uncommitted === undefined) return { shell };
  return { shell, uncommitted: uncommitted.filter((file) => isOf(shell, file)) };
}

const isOf = (shell: string, file: string): boolean => !file.startsWith('shells/') || file.startsWith(`shells/${shell}/`);

/** For each shell: everything that its summary depends on by itself, as one hash. */
function keysOf({ ids, uncommitted }: FileIds): ReadonlyMap<string, string> {
  // What an older program judged is judged again.
  const shared: string[] = [...looksOfFiles(programFiles()).lines];
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
    worker.on('message', ({ shell, summary }: { readonly shell: string; readonly summary?: Summary }) => {
      if (summary) taken.push(take(shell, summary));
    });
    worker.on('error', reject);
    worker.on('exit', () => void Promise.all(taken).then(() => resolve(), reject));
  });
}
