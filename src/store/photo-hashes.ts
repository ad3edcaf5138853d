import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import type { StoreText } from '../model/load-types.js';

/** SHA-256 of every photo file of a shell: path in the store → hex. A file that cannot be read is left out. */
export async function hashPhotos({ root, photos }: StoreText, shell: string): Promise<ReadonlyMap<string, string>> {
  const hashes = new Map<string, string>();
  for (const file of photos.keys()) {
    if (!file.startsWith(`shells/${shell}/photos/`)) continue;
    const hash = createHash('sha256');
    try {
      await pipeline(createReadStream(path.join(root, file)), hash);
      hashes.set(file, hash.digest('hex'));
    } catch {
      // Counts as absent, as a missing file does.
    }
  }
  return hashes;
}
