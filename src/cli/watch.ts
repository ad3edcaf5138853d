import { watch } from 'node:fs';

/** An editor writes a file in several steps; this long after the last of them it is whole. */
const SETTLED_MS = 200;

/**
 * Runs once now, and again when a YAML file below a folder has changed, one run after the other, until the signal. What `run` throws
 * ends it.
 */
export async function watchRecords(folder: string, run: () => Promise<void>, signal: AbortSignal): Promise<void> {
  const watcher = watch(folder, { recursive: true });
  let due: NodeJS.Timeout | undefined;
  try {
    await new Promise<void>((resolve, reject) => {
      let running = run();
      running.catch(reject);
      const again = (): void => {
        running = running.then(run);
        running.catch(reject);
      };
      watcher.on('change', (_, filename) => {
        if (!isRecord(String(filename))) return;
        clearTimeout(due);
        due = setTimeout(again, SETTLED_MS);
      });
      watcher.on('error', reject);
      if (signal.aborted) resolve();
      signal.addEventListener('abort', () => void running.then(resolve, reject), { once: true });
    });
  } finally {
    clearTimeout(due);
    watcher.close();
  }
}

/** Records, but not what an editor keeps beside them (`.members.yaml.swp`). */
const isRecord = (filename: string): boolean => /\.ya?ml$/iu.test(filename) && !/(?:^|[\\/])\./u.test(filename);
