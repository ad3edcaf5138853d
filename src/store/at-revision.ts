import { createHash } from 'node:crypto';
import type { StoreText } from '../model/load-types.js';
import { eachBlob, readBlobs } from './git/blobs.js';
import { listTree, type TreeFile } from './git/tree.js';
import { resolveRevision } from './revision.js';
import { DEEPEST_FOLDER, decode, TOO_DEEP, takenAs, tooLarge } from './taken.js';

/**
 * The store as it stood at a commit, a tag or a date, read from Git's objects: the work tree is neither looked at nor touched. Photos
 * are told by path and size; {@link hashPhotosAt} gives their hashes. With `shell`: of the shells only that one.
 * Throws {@link UserError} where there is no such revision, or where the store was not in it.
 */
export async function readStoreTextAt(root: string, revision: string, shell?: string): Promise<StoreText> {
  const wanted = (file: string): boolean =>
    shell === undefined || !file.startsWith('shells/') || file.startsWith(`shells/${shell}/`);
  const files = new Map<string, string>();
  const photos = new Map<string, number>();
  const refused = new Map<string, string>();
  const reading: TreeFile[] = [];
  for (const file of (await listTree(root, await resolveRevision(root, revision))).filter(({ path }) => wanted(path))) {
    const taken = takenAs(file.path);
    if (taken === undefined) continue;
    const why = refusal(file);
    if (why !== undefined) refused.set(file.path, why);
    else if (taken === 'photo') photos.set(file.path, file.bytes);
    else if (taken === 'yaml') reading.push(file);
  }
  const blobs = await readBlobs(
    root,
    reading.map(({ blob }) => blob),
  );
  for (const { path, blob } of reading) {
    const text = decode(blobs.get(blob) as Buffer);
    if (text.refused === undefined) files.set(path, text.text);
    else refused.set(path, text.refused);
  }
  return { root, files, photos, ...(refused.size > 0 ? { refused } : {}) };
}

/** SHA-256 of a shell's photo files at a revision: path in the store → hex, as `hashPhotos` gives it for the work tree. */
export async function hashPhotosAt(root: string, revision: string, shell: string): Promise<ReadonlyMap<string, string>> {
  const tree = await listTree(root, await resolveRevision(root, revision));
  const photos = tree.filter((file) => file.path.startsWith(`shells/${shell}/photos/`) && takenAs(file.path) === 'photo');
  const hashes = new Map<string, string>();
  // One at a time: pictures are large, and all of a shell's need not fit into memory.
  for (const { path, blob, link } of photos)
    if (!link)
      await eachBlob(root, [blob], (_, bytes) => void hashes.set(path, createHash('sha256').update(bytes).digest('hex')));
  return hashes;
}

function refusal({ path, bytes, link }: TreeFile): string | undefined {
  if (link) return 'This is a link, which is not followed in an earlier revision: copy the file in';
  if (path.split('/').length > DEEPEST_FOLDER + 1) return TOO_DEEP;
  return takenAs(path) === 'yaml' ? tooLarge(bytes) : undefined;
}
