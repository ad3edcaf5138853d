import { parentPort, workerData } from 'node:worker_threads';
import { loadStore } from '../model/load.js';
import { readStoreText } from '../store/read.js';
import { summaryOf } from './summary.js';

/** What a worker is given: its share of the shells, each with its uncommitted files. */
export interface WorkerShare {
  readonly root: string;
  readonly shells: readonly { readonly shell: string; readonly uncommitted?: readonly string[] }[];
}

async function judgeShare({ root, shells }: WorkerShare): Promise<void> {
  const loaded = loadStore(await readStoreText(root));
  for (const { shell, uncommitted } of shells) parentPort?.postMessage({ shell, summary: summaryOf(loaded, shell, uncommitted) });
}

void judgeShare(workerData as WorkerShare);
