import { createHash } from 'node:crypto';
import type { StoreText } from '../model/load-types.js';
import { UserError } from '../user-error.js';
import { askGit, GitFailed, runGit } from './git.js';
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
    else reading.push(file);
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
  for (const { path, blob, link } of photos) {
    if (!link)
      hashes.set(
        path,
        createHash('sha256')
          .update(await runGit(root, ['cat-file', 'blob', blob]))
          .digest('hex'),
      );
  }
  return hashes;
}

/** A file of a tree of Git's. */
export interface TreeFile {
  /** Relative to the store, with forward slashes. */
  readonly path: string;
  /** Git's id of the contents. */
  readonly blob: string;
  readonly bytes: number;
  /** A symbolic link, whose target is not followed. */
  readonly link: boolean;
}

/** Every file of the store in a commit. Throws {@link UserError} where the store was not there yet. */
export async function listTree(root: string, commit: string): Promise<readonly TreeFile[]> {
  const prefix = await askGit(root, ['rev-parse', '--show-prefix']);
  try {
    const told = await askGit(root, ['ls-tree', '-r', '-z', '-l', '--full-tree', '--end-of-options', `${commit}:${prefix}`]);
    return told.split('\0').flatMap((line) => {
      const [, mode, kind, blob = '', bytes, path] = /^(\d+) (\w+) ([0-9a-f]+) +(\d+|-)\t(.*)$/su.exec(line) ?? [];
      return kind === 'blob' && path !== undefined ? [{ path, blob, bytes: Number(bytes), link: mode === '120000' }] : [];
    });
  } catch (error) {
    if (error instanceof GitFailed) throw new UserError(`The store at ${root} was not there yet at ${commit.slice(0, 10)}.`);
    throw error;
  }
}

function refusal({ path, bytes, link }: TreeFile): string | undefined {
  if (link) return 'This is a link, which is not followed in an earlier revision: copy the file in';
  if (path.split('/').length > DEEPEST_FOLDER + 1) return TOO_DEEP;
  return takenAs(path) === 'yaml' ? tooLarge(bytes) : undefined;
}

/** Contents by Git's id, read in one go. */
export async function readBlobs(root: string, blobs: readonly string[]): Promise<ReadonlyMap<string, Buffer>> {
  const found = new Map<string, Buffer>();
  await eachBlob(root, blobs, (blob, bytes) => void found.set(blob, bytes));
  return found;
}

/** Visits contents by Git's id, each once and as Git gives them, so that a whole history need not fit into memory. */
export async function eachBlob(
  root: string,
  blobs: readonly string[],
  visit: (blob: string, bytes: Buffer) => void,
): Promise<void> {
  const wanted = [...new Set(blobs)];
  if (wanted.length === 0) return;
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
      if (kind !== 'blob')
        throw new UserError(`Git lacks the contents ${blob}: the clone is not whole. Fetch the rest: git fetch --unshallow`);
      const whole = end + 1 + Number(bytes) + 1;
      needed = whole;
      if (told.length < whole) break;
      visit(blob, told.subarray(end + 1, whole - 1));
      told = told.subarray(whole);
      needed = 0;
    }
    held = [told];
    size = told.length;
  };
  await runGit(root, ['cat-file', '--batch'], { input: `${wanted.join('\n')}\n`, take });
}
