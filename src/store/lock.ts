import fs from 'node:fs';
import path from 'node:path';
import { lock } from 'proper-lockfile';
import { UserError } from '../user-error.js';
import { hasEnded, ownName } from './lock-owner.js';
import { reason } from './read.js';

/**
 * A lock that nobody has touched for so long was left by a program that was killed, or by a machine that was switched off. Where the
 * owner was a process of this machine, it is taken over at once.
 */
const STALE_MS = 10_000;
/** Fifty writers, each of whom may read the whole store, have their turn within it. */
const PATIENCE_MS = 120_000;

/**
 * Runs `act` while no other shellbook writes to the store, on this machine or on another that shares the folder. Throws
 * {@link UserError} where the folder cannot be written to, and where another goes on writing for two minutes.
 */
export async function underLock<T>(root: string, act: () => Promise<T>): Promise<T> {
  let release: () => Promise<void>;
  try {
    release = await lock(root, {
      // Folders without a file, which Git does not see and the reader passes over.
      lockfilePath: path.join(root, '.shellbook.lock'),
      fs: FOLDERS,
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
      throw new UserError(
        `Another shellbook has been writing to ${root} for two minutes: nothing was written. Try again when it has ended.`,
      );
    throw new UserError(`The store at ${root} cannot be written to: ${reason(error)}. Nothing was written.`);
  }
  try {
    return await act();
  } finally {
    // Given up already where it was lost.
    await release().catch(() => {});
  }
}

type Done = (error: NodeJS.ErrnoException | null) => void;

/** Like the system’s own, but the folder of the lock holds another, empty too, whose name tells the owner. */
const FOLDERS = {
  ...fs,
  mkdir: (lockPath: string, done: Done): void => settle(() => take(lockPath), done),
  rmdir: (lockPath: string, done: Done): void => settle(() => giveUp(lockPath), done),
  rmdirSync: giveUp,
};

function settle(act: () => void, done: Done): void {
  try {
    act();
  } catch (error) {
    done(error as NodeJS.ErrnoException);
    return;
  }
  done(null);
}

function take(lockPath: string): void {
  try {
    fs.mkdirSync(lockPath);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST' || !endDead(lockPath)) throw error;
    fs.mkdirSync(lockPath);
  }
  const name = ownName();
  // Without the name the lock is as good, only that a dead owner is waited for. Unless it was taken away in this moment.
  if (name !== undefined && !tried(() => fs.mkdirSync(path.join(lockPath, name)))) fs.statSync(lockPath);
}

/** Takes away the lock of an owner who has ended. Of several who find it dead, only one takes the name away, and then the lock. */
function endDead(lockPath: string): boolean {
  return namesIn(lockPath).some(
    (name) => hasEnded(name) && tried(() => fs.rmdirSync(path.join(lockPath, name))) && tried(() => fs.rmdirSync(lockPath)),
  );
}

function giveUp(lockPath: string): void {
  for (const name of namesIn(lockPath)) tried(() => fs.rmdirSync(path.join(lockPath, name)));
  fs.rmdirSync(lockPath);
}

function namesIn(lockPath: string): readonly string[] {
  try {
    return fs.readdirSync(lockPath);
  } catch {
    return [];
  }
}

function tried(act: () => void): boolean {
  try {
    act();
    return true;
  } catch {
    return false;
  }
}
