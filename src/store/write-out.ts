import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { UserError } from '../user-error.js';
import { placeOf } from './place.js';
import { reason } from './read.js';
import { replaceFile, sweep } from './replace.js';

/**
 * Writes what was made of the records: a book, a sheet, a table. At one stroke: whoever opens the file meanwhile sees the old one or the
 * new one, never half of one; what a killed run left beside it goes. Within the store no link is followed out of it; elsewhere the path
 * is the user's own. Throws {@link UserError}.
 */
export async function writeOut(root: string | undefined, file: string, bytes: Uint8Array | string): Promise<void> {
  const full = path.resolve(file);
  try {
    const target = await targetOf(root, full);
    await sweep(path.dirname(target));
    await replaceFile(target, typeof bytes === 'string' ? Buffer.from(bytes) : bytes);
  } catch (error) {
    if (error instanceof UserError) throw error;
    throw new UserError(`${file} cannot be written: ${reason(error)}. ${LEFT}`);
  }
}

const LEFT = 'What was there is as it was.';

async function targetOf(root: string | undefined, full: string): Promise<string> {
  const inside = root === undefined ? '..' : path.relative(path.resolve(root), full);
  if (root !== undefined && inside !== '' && !inside.startsWith('..') && !path.isAbsolute(inside))
    return placeOf(root, inside.split(path.sep).join('/'));
  await mkdir(path.dirname(full), { recursive: true });
  return full;
}
