import { createHash } from 'node:crypto';
import { damaged } from './failed.js';
import { requireRepository, runGit } from './look.js';
import { lackingBlob } from './tree.js';

/** Contents by Git's id, read in one go. */
export async function readBlobs(root: string, blobs: readonly string[]): Promise<ReadonlyMap<string, Buffer>> {
  const found = new Map<string, Buffer>();
  await eachBlob(root, blobs, (blob, bytes) => void found.set(blob, bytes));
  return found;
}

/**
 * Visits contents by Git's id, each once and as Git gives them, so that a whole history need not fit into memory. Each is held against
 * its id. Throws {@link GitFailed} where contents are missing or are not what their id says.
 */
export async function eachBlob(
  root: string,
  blobs: readonly string[],
  visit: (blob: string, bytes: Buffer) => void,
): Promise<void> {
  const wanted = [...new Set(blobs)];
  if (wanted.length === 0) return;
  const { objects, top } = requireRepository(root);
  let held: Buffer[] = [];
  let size = 0;
  let needed = 0;
  const take = (piece: Buffer): void => {
    held.push(piece);
    size += piece.length;
    if (size < needed) return;
    let told = held.length === 1 ? piece : Buffer.concat(held);
    for (;;) {
      const end = told.indexOf(10);
      if (end < 0) break;
      const [blob = '', kind, bytes] = told.toString('latin1', 0, end).split(' ');
      if (kind !== 'blob') throw lackingBlob(root, blob);
      const whole = end + 1 + Number(bytes) + 1;
      needed = whole;
      if (told.length < whole) break;
      const contents = told.subarray(end + 1, whole - 1);
      if (blobId(contents, objects) !== blob) throw damaged(top, `object ${blob} holds something else than its name says`);
      visit(blob, contents);
      told = told.subarray(whole);
      needed = 0;
    }
    held = [told];
    size = told.length;
  };
  await runGit(root, ['cat-file', '--batch'], { input: `${wanted.join('\n')}\n`, take });
}

/** Git's name for contents (`git hash-object`): of `blob`, their length, a zero byte and themselves. */
export const blobId = (contents: Uint8Array, objects: 'sha1' | 'sha256'): string =>
  createHash(objects).update(`blob ${contents.length}\0`).update(contents).digest('hex');
