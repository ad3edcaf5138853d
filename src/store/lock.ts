import path from 'node:path';
import { lock } from 'proper-lockfile';
import { CannotDo } from '../cannot.js';
import { reason } from './read.js';

/** A lock that nobody has touched for so long was left by a program that was killed. */
const STALE_MS = 10_000;
/** Fifty writers, each of whom may read the whole store, have their turn within it. */
const PATIENCE_MS = 120_000;

/**
 * Runs `act` while no other shellbook writes to the store, on this machine or on another that shares the folder. Throws
 * {@link CannotDo} where the folder cannot be written to, and where another goes on writing for two minutes.
 */
export async function underLock<T>(root: string, act: () => Promise<T>): Promise<T> {
  let release: () => Promise<void>;
  try {
    release = await lock(root, {
      // An empty folder, which Git does not see and the reader passes over.
      lockfilePath: path.join(root, '.shellbook.lock'),
      stale: STALE_MS,
      retries: {
        retries: PATIENCE_MS / 200,
        factor: 1.2,
        minTimeout: 20,
        maxTimeout: 200,
        randomize: true,
        maxRetryTime: PATIENCE_MS,
      },
      // A machine that slept: the next one may have begun, and looks at the files again before it writes.
      onCompromised: () => {},
    });
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ELOCKED')
      throw new CannotDo(
        `Another shellbook has been writing to ${root} for two minutes: nothing was written. Try again when it has ended.`,
      );
    throw new CannotDo(`The store at ${root} cannot be written to: ${reason(error)}. Nothing was written.`);
  }
  try {
    return await act();
  } finally {
    // Given up already where it was lost.
    await release().catch(() => {});
  }
}
