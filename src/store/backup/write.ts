import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { lstat, open, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import { pack } from 'tar-stream';
import { UserError } from '../../user-error.js';
import { reason } from '../read.js';
import { freshName, sweep } from '../replace.js';
import { type BackupManifest, FILES_FOLDER, HISTORY_NAME, MANIFEST_NAME } from './manifest.js';
import { readBackup } from './read.js';

/** A file’s length and SHA-256 (hex), without holding it in memory. */
export async function sizeAndDigest(file: string): Promise<{ readonly bytes: number; readonly sha256: string }> {
  const hash = createHash('sha256');
  let bytes = 0;
  for await (const chunk of createReadStream(file)) {
    hash.update(chunk as Buffer);
    bytes += (chunk as Buffer).length;
  }
  return { bytes, sha256: hash.digest('hex') };
}

/**
 * Writes a backup (gzip of tar: the manifest, the history, then every file) beside `target`, reads it back whole and compares every part,
 * then renames it. Throws {@link UserError} where it is there already, or where a file changed meanwhile; then nothing was written.
 */
export async function writeBackup(
  target: string,
  root: string,
  manifest: BackupManifest,
  history: string | undefined,
): Promise<number> {
  await refuseTarget(target);
  const fresh = freshName(target);
  try {
    await sweep(path.dirname(target));
    const tar = pack();
    const done = pipeline(tar, createGzip({ level: 6 }), createWriteStream(fresh, { flags: 'wx' }));
    const filled = fill(tar, root, manifest, history).catch((error: unknown) => {
      tar.destroy();
      throw error;
    });
    await Promise.all([filled, done]).catch(async (error: unknown) => {
      await filled;
      throw error;
    });
    // It is worth what can be read back.
    for await (const _part of readBackup(fresh, path.basename(target)).files);
    const file = await open(fresh, 'r+');
    await file.sync();
    await file.close();
    await rename(fresh, target);
    return (await stat(target)).size;
  } catch (error) {
    if (error instanceof UserError || (error as NodeJS.ErrnoException).syscall === undefined) throw error;
    throw new UserError(`${path.basename(target)} cannot be written: ${reason(error)}. Nothing was written.`);
  } finally {
    await rm(fresh, { force: true });
  }
}

/** Throws {@link UserError} where a backup cannot go there: asked before anything is packed. */
export async function refuseTarget(target: string): Promise<void> {
  if (await lstat(target).catch(() => undefined))
    throw new UserError(`${path.basename(target)} is there already: nothing was written. Name a new file.`);
  const folder = path.dirname(target);
  if (!(await stat(folder).catch(() => undefined))?.isDirectory())
    throw new UserError(`There is no folder ${folder}: nothing was written. Make it, or name another.`);
}

async function fill(
  tar: ReturnType<typeof pack>,
  root: string,
  manifest: BackupManifest,
  history: string | undefined,
): Promise<void> {
  const text = Buffer.from(JSON.stringify(manifest));
  tar.entry({ name: MANIFEST_NAME, ...HEAD }, text);
  if (history !== undefined && manifest.history) await entry(tar, HISTORY_NAME, history, manifest.history);
  for (const one of manifest.files) await entry(tar, FILES_FOLDER + one.path, path.join(root, one.path), one);
  tar.finalize();
}

/** The same for everybody and every day, so that the same store gives the same parts. */
const HEAD = { mode: 0o644, mtime: new Date(0), uid: 0, gid: 0 };

async function entry(
  tar: ReturnType<typeof pack>,
  name: string,
  file: string,
  { bytes, sha256 }: { readonly bytes: number; readonly sha256: string },
): Promise<void> {
  const now = await sizeAndDigest(file);
  if (now.bytes !== bytes || now.sha256 !== sha256)
    throw new UserError(`${name} changed while it was being read: nothing was written. Try again.`);
  await pipeline(createReadStream(file), tar.entry({ name, size: bytes, ...HEAD }));
}
