import { constants } from 'node:fs';
import { open } from 'node:fs/promises';
import { UserError } from '../user-error.js';
import { reason } from './read.js';

/**
 * A file that somebody names at the prompt, read whole. Throws {@link UserError} where it is not there, is no file (a pipe or a device
 * may have no end) or has more bytes than it may have; it is not opened further then.
 */
export async function readGivenFile(file: string, shown: string, mostBytes: number, wanted: string): Promise<Buffer> {
  const handle = await open(file, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0)).catch((error: unknown) => {
    throw new UserError(`${shown} cannot be read: ${reason(error)}`);
  });
  try {
    const found = await handle.stat();
    if (found.isDirectory()) throw new UserError(`${shown} cannot be read: it is a folder`);
    if (!found.isFile()) throw new UserError(`${shown} is a pipe or a device and no file, expected ${wanted}`);
    if (found.size > mostBytes)
      throw new UserError(`${shown} is over ${Math.floor(mostBytes / 1048576)} MB, expected ${wanted}: split it`);
    // What grows meanwhile is read no further.
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(found.size), 0, found.size, 0);
    return buffer.subarray(0, bytesRead);
  } catch (error) {
    if (error instanceof UserError) throw error;
    throw new UserError(`${shown} cannot be read: ${reason(error)}`);
  } finally {
    await handle.close();
  }
}
