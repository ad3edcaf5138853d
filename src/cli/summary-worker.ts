import { parentPort, workerData } from 'node:worker_threads';
import { loadStore } from '../model/load.js';
import { readStoreText } from '../store/read.js';
import { type Summary, summaryOf } from './summary.js';

/** What a worker is given: its share of the shells, each with its uncommitted files. */
export interface WorkerShare {
  readonly root: string;
  readonly shells: readonly { readonly shell: string; readonly uncommitted?: readonly string[] }[];
}

/** What a worker hands back of a shell. */
export interface ShellSummary {
  readonly shell: string;
  readonly summary?: Summary;
}

const AT_ONCE = 20;

async function judgeShare({ root, shells }: WorkerShare): Promise<void> {
  const loaded = loadStore(await readStoreText(root));
  // To wake the other thread for each would take longer than to hand it over.
  let done: ShellSummary[] = [];
  const hand = (): void => {
    parentPort?.postMessage(done);
    done = [];
  };
  for (const { shell, uncommitted } of shells) {
    const summary = summaryOf(loaded, shell, uncommitted);
    done.push({ shell, ...(summary ? { summary } : {}) });
    if (done.length >= AT_ONCE) hand();
  }
  hand();
}

void judgeShare(workerData as WorkerShare);
