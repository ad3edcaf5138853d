import { lstat, mkdir, open, readdir, rename, rm, rmdir } from 'node:fs/promises';
import path from 'node:path';
import { UserError } from '../user-error.js';
import { placeOf } from './place.js';
import { reason } from './read.js';
import { freshName, sweep } from './replace.js';

/** A file for a new store: named relative to it, with forward slashes. */
export interface NewFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/**
 * Makes a new store of files in `dir`, which is not there yet or empty. All or nothing: written beside it, forced to the disk, then
 * renamed. Throws {@link UserError} with what stands in the way, and then `dir` is as it was.
 */
export async function layDown(
  dir: string,
  files: Iterable<NewFile> | AsyncIterable<NewFile>,
  /** Done in the new folder when every file is in it, before it takes its place. */
  finish?: (folder: string) => Promise<void>,
): Promise<number> {
  await refuseUnlessFree(dir);
  const fresh = freshName(dir);
  let count = 0;
  try {
    await mkdir(fresh, { recursive: true });
    await sweep(path.dirname(dir));
    for await (const { path: file, bytes } of files) {
      const handle = await open(await placeOf(fresh, file), 'wx');
      try {
        await handle.writeFile(bytes);
        await handle.sync();
      } finally {
        await handle.close();
      }
      count++;
    }
    await finish?.(fresh);
    await rmdir(dir).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'ENOENT') throw error;
    });
    await rename(fresh, dir);
    return count;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).syscall === undefined) throw error;
    throw new UserError(`${dir} cannot be written: ${reason(error)}. Nothing was written.`);
  } finally {
    await rm(fresh, { recursive: true, force: true });
  }
}

async function refuseUnlessFree(dir: string): Promise<void> {
  const found = await lstat(dir).catch(() => undefined);
  if (found === undefined) return;
  if (!found.isDirectory()) throw new UserError(`${dir} is not a folder: nothing was written. Name a new or an empty folder.`);
  if ((await readdir(dir)).length > 0)
    throw new UserError(`${dir} is not empty: nothing was written. Name a new or an empty folder.`);
}
