import { createHash, randomBytes } from 'node:crypto';
import { type FileHandle, open, readdir, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { hasEnded, ownName } from './own/owner.js';

/** `.members.yaml.OWNER-1f2e3d4c.new`: hidden from the reader, with the process that it belongs to. */
const NEW = /^\..+\.([0-9a-f]{16}\.\d+\.\d+)-[0-9a-f]{8}\.new$/u;
/** File systems take names of 255 bytes; what is added has less than 80. */
const LONGEST_NAME = 120;

/** A name beside `target` that no other process uses, and that says whose it is. */
export const freshName = (target: string): string => {
  const name = path.basename(target);
  const short = Buffer.byteLength(name) > LONGEST_NAME ? createHash('sha256').update(name).digest('hex') : name;
  return path.join(path.dirname(target), `.${short}.${ownName()}-${randomBytes(4).toString('hex')}.new`);
};

export interface ReplaceOptions {
  /** Asked right before the stroke; where it says no, the old file stays and the answer is false. */
  readonly last?: () => Promise<boolean>;
  /** Whether it must be on the disk before the answer; false for what can be computed again. */
  readonly sync?: boolean;
}

/**
 * Puts `bytes` in a file's place at one stroke: written beside it, forced to the disk, renamed. At any moment the file is whole, the
 * old one or the new. Unlike a plain write it also fails, and leaves the old file, where a disk takes only some of the bytes.
 */
export async function replaceFile(
  target: string,
  bytes: Uint8Array,
  { last, sync = true }: ReplaceOptions = {},
): Promise<boolean> {
  const folder = path.dirname(target);
  const fresh = freshName(target);
  const mode = await stat(target).then(
    (found) => found.mode & 0o777,
    () => undefined,
  );
  try {
    // Fails where the name is taken, by a link for one.
    await using(await open(fresh, 'wx'), async (file) => {
      if (mode !== undefined) await file.chmod(mode);
      await file.writeFile(bytes);
      if (sync) await file.sync();
    });
    if (last && !(await last())) return false;
    await rename(fresh, target);
  } finally {
    await rm(fresh, { force: true });
  }
  if (sync) await syncFolder(folder);
  return true;
}

/** Takes away what writers left beside their files that were killed: files and folders of processes that have ended. */
export async function sweep(folder: string): Promise<void> {
  for (const name of await readdir(folder)) {
    const owner = NEW.exec(name)?.[1];
    if (owner !== undefined && hasEnded(owner)) await rm(path.join(folder, name), { recursive: true, force: true });
  }
}

async function using(file: FileHandle, act: (file: FileHandle) => Promise<void>): Promise<void> {
  try {
    await act(file);
  } finally {
    await file.close();
  }
}

/** The new name is on the disk too. Some systems have no such thing for folders. */
async function syncFolder(folder: string): Promise<void> {
  try {
    await using(await open(folder, 'r'), (file) => file.sync());
  } catch {
    // The file itself is safe; only its name might be the old one after a power cut.
  }
}
