import { lstat, mkdir, readdir, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { UserError } from '../../user-error.js';

/** Says that a folder was made by `demo` and may be made again. */
export const DEMO_MARKER = '.shellbook-demo';

/**
 * Makes `dir` an empty folder for the demo: a new one, or its own earlier one emptied.
 * Throws {@link UserError} where anything else is in it, and where it is a link or a file.
 */
export async function clearDemo(dir: string): Promise<void> {
  const held = await contentsOf(dir);
  if (held.length > 0 && !held.includes(DEMO_MARKER)) {
    throw new UserError(
      `${dir} holds something else (${held.slice(0, 3).join(', ')}): nothing was touched. Name a new or an empty folder.`,
    );
  }
  for (const name of held.filter((one) => one !== DEMO_MARKER)) await rm(path.join(dir, name), { recursive: true, force: true });
  await mkdir(dir, { recursive: true });
  await writeFile(path.join(dir, DEMO_MARKER), 'Made by `shellbook demo`, which may replace everything in this folder.\n');
}

async function contentsOf(dir: string): Promise<readonly string[]> {
  try {
    if (!(await lstat(dir)).isDirectory())
      throw new UserError(`${dir} is not a folder: nothing was touched. Name a new or an empty folder.`);
    return await readdir(dir);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
}
