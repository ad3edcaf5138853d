import { lstat, mkdir, realpath } from 'node:fs/promises';
import path from 'node:path';
import { UserError } from '../user-error.js';
import { reason } from './read.js';

/**
 * Where a file of the store lies on the disk, its folder made; behind a link where that stays within the store. Throws
 * {@link UserError} for a name or a link that leads out, and where the folder cannot be made.
 */
export async function placeOf(root: string, file: string): Promise<string> {
  const parts = file.split('/');
  if (path.isAbsolute(file) || /[\\\p{Cc}]/u.test(file) || parts.some((part) => ['', '.', '..'].includes(part)))
    throw new UserError(`Found the file name \`${file}\`, expected a name within the store, as shells/QF-007/welds.yaml`);
  try {
    const top = await realpath(root);
    let at = top;
    for (const part of parts.slice(0, -1)) {
      at = await follow(path.join(at, part), top, file);
      // Already there, or made by another in this moment.
      await mkdir(at).catch((error: NodeJS.ErrnoException) => {
        if (error.code !== 'EEXIST') throw error;
      });
    }
    return await follow(path.join(at, parts.at(-1) as string), top, file);
  } catch (error) {
    if (error instanceof UserError) throw error;
    throw new UserError(`${file} cannot be written: ${reason(error)}. Nothing was written.`);
  }
}

async function follow(at: string, top: string, file: string): Promise<string> {
  try {
    if (!(await lstat(at)).isSymbolicLink()) return at;
  } catch {
    return at;
  }
  const real = await realpath(at).catch(() => '');
  if (real.startsWith(top + path.sep)) return real;
  throw new UserError(
    `${file} lies behind a link that leads out of the store, or nowhere: nothing was written. Copy the file in.`,
  );
}
