import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { realpath } from 'node:fs/promises';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { StoreText } from '../model/load-types.js';

/**
 * SHA-256 of the photo files of a shell: path in the store → hex. Only files that the reader found and that lie within the store
 * are opened; one that cannot be read any more is left out, and so counts as absent.
 */
export async function hashPhotos(text: StoreText, shell: string): Promise<ReadonlyMap<string, string>> {
  const hashes = new Map<string, string>();
  const folder = `shells/${shell}/photos/`;
  for (const file of [...text.photos.keys()].filter((one) => one.startsWith(folder)).sort()) {
    const hash = await hashFile(text.root, file);
    if (hash !== undefined) hashes.set(file, hash);
  }
  return hashes;
}

async function hashFile(root: string, file: string): Promise<string | undefined> {
  try {
    const [top, real] = await Promise.all([realpath(root), realpath(path.join(root, file))]);
    if (!real.startsWith(top + path.sep)) return undefined;
    const hash = createHash('sha256');
    await pipeline(createReadStream(real), hash);
    return hash.digest('hex');
  } catch {
    return undefined;
  }
}
