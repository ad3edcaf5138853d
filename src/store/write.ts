import { readFile, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { UserError } from '../user-error.js';
import { normalizeEol, restoreEol } from './line-ends.js';
import { type Held, underLock } from './lock.js';
import { placeOf } from './place.js';
import { reason } from './read.js';
import { replaceFile, sweep } from './replace.js';
import { decode, tooLarge } from './taken.js';

/** New text of a file from its old, both with `\n` as the only line end and no byte order mark; null where there is no file yet. */
export type TextChange = (old: string | null) => string;

/** Writes to a store whose lock is held. */
export interface Writer {
  readonly held: Held;
  /**
   * Changes one file, named relative to the store with forward slashes; its folder is made where it is not there. False where the
   * text stayed the same and nothing was written.
   */
  update(file: string, change: TextChange): Promise<boolean>;
  /**
   * Puts back what stood in a file (null: no file), where what stands there now is what `isKnown` knows. Throws {@link UserError} where it
   * is not, and then the file is as it was.
   */
  restore(file: string, before: Buffer | null, isKnown: (now: Buffer | null) => boolean): Promise<void>;
}

/** A file that was written: its bytes before and after. */
export interface WrittenFile {
  readonly file: string;
  readonly before: Buffer | null;
  readonly after: Buffer;
}

/**
 * Changes files of a store so that nothing is lost: under the store's lock, from what stands there now, and each at one stroke. Killed at
 * any moment, a file holds the old text or the new. Line ends and byte order mark stay as they were. Several steps come under one lock,
 * as reading the store for a free id and writing the record that bears it.
 * Throws {@link UserError} with what stands in the way, and then nothing was written; what a `change` throws comes through.
 */
export const writing = <T>(
  root: string,
  act: (writer: Writer) => Promise<T>,
  /** Hears what was written, also where a later step failed. */
  keep?: (written: readonly WrittenFile[]) => Promise<void>,
): Promise<T> =>
  underLock(root, async (held) => {
    const written: WrittenFile[] = [];
    try {
      return await act({
        held,
        update: (file, change) => update(root, file, change, held, written),
        restore: (file, before, isKnown) => restore(root, file, before, { held, isKnown }),
      });
    } finally {
      await keep?.(written);
    }
  });

/** So often is an editor waited for that saves in the same moment. */
const ATTEMPTS = 5;

async function update(root: string, file: string, change: TextChange, held: Held, written: WrittenFile[]): Promise<boolean> {
  const target = await placeOf(root, file);
  try {
    await sweep(path.dirname(target));
    for (let i = 0; i < ATTEMPTS; i++) {
      const before = await bytesOf(target, file);
      const old = before === null ? null : normalizeEol(before.toString('utf8'));
      const text = change(old?.text ?? null);
      const bytes = Buffer.from(old === null ? text : restoreEol(text, old), 'utf8');
      if (before?.equals(bytes)) return false;
      // Else the next check would not read it.
      const large = tooLarge(bytes.length);
      if (large !== undefined)
        throw new UserError(
          `${file} would be too large to be read again: nothing was written. Put the new records into another file, as --into ${otherName(file)}`,
        );
      const last = async (): Promise<boolean> => {
        const unchanged = same(before, await bytesOf(target, file));
        held.still();
        return unchanged;
      };
      if (await replaceFile(target, bytes, { last })) {
        keepWritten(written, { file, before, after: bytes });
        return true;
      }
    }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).syscall === undefined) throw error;
    throw new UserError(`${file} cannot be written: ${reason(error)}. It is as it was.`);
  }
  throw new UserError(
    `${file} is being changed by another program again and again: nothing was written. Close it and try again.`,
  );
}

/** A file that is written twice under one lock was changed once, from what stood there first to what stands there last. */
function keepWritten(written: WrittenFile[], now: WrittenFile): void {
  const at = written.findIndex(({ file }) => file === now.file);
  if (at < 0) written.push(now);
  else written[at] = { ...now, before: (written[at] as WrittenFile).before };
}

async function restore(
  root: string,
  file: string,
  before: Buffer | null,
  { held, isKnown }: { readonly held: Held; readonly isKnown: (now: Buffer | null) => boolean },
): Promise<void> {
  const target = await placeOf(root, file);
  const last = async (): Promise<boolean> => {
    held.still();
    return isKnown(await bytesOf(target, file));
  };
  try {
    await sweep(path.dirname(target));
    if (before === null) {
      if (await last()) return await rm(target);
    } else if (await replaceFile(target, before, { last })) return;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).syscall === undefined) throw error;
    throw new UserError(`${file} cannot be written: ${reason(error)}. It is as it was.`);
  }
  throw new UserError(`${file} was changed by another program in this moment: try again`);
}

/** `shells/QF-007/members.yaml` → `members-2`. */
function otherName(file: string): string {
  const stem = path.posix.basename(file, '.yaml');
  const [, base = stem, number] = /^(.*)-(\d+)$/u.exec(stem) ?? [];
  return `${base}-${Number(number ?? 1) + 1}`;
}

const same = (a: Buffer | null, b: Buffer | null): boolean => (a === null || b === null ? a === b : a.equals(b));

/** Null where there is no such file. */
async function bytesOf(target: string, file: string): Promise<Buffer | null> {
  const found = await stat(target).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return null;
    throw error;
  });
  if (found === null) return null;
  const refuse = (why: string): never => {
    throw new UserError(`${file}: ${why}. Nothing was written.`);
  };
  if (!found.isFile()) return refuse('This is not a file, expected a record file');
  const large = tooLarge(found.size);
  if (large !== undefined) return refuse(large);
  const bytes = await readFile(target);
  const { refused } = decode(bytes);
  return refused === undefined ? bytes : refuse(refused);
}
