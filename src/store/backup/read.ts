import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { createGunzip } from 'node:zlib';
import { extract } from 'tar-stream';
import { UserError } from '../../user-error.js';
import type { NewFile } from '../lay-down.js';
import {
  type BackupManifest,
  FILES_FOLDER,
  HISTORY_NAME,
  LARGEST_MANIFEST,
  MANIFEST_NAME,
  readBackupManifest,
} from './manifest.js';

/** A part that is larger does not fit into memory beside the others. */
const LARGEST_PART = 2 ** 31 - 1;

export interface OpenBackup {
  /** The history first (under {@link HISTORY_NAME}), then the files of the store: each as its digest says, else this throws. */
  readonly files: AsyncGenerator<NewFile>;
  /** Known as soon as the first file was given, or all were. */
  manifest(): BackupManifest;
}

/**
 * Reads a backup part by part. Everything is held against the manifest, which comes first: names, sizes, digests, order; what it does not
 * name, and anything that is no plain file, ends it. So no more is ever unpacked than the manifest admits to. Throws {@link UserError}.
 */
export function readBackup(file: string, shown: string): OpenBackup {
  let manifest: BackupManifest | undefined;
  const refuse = (why: string): never => {
    throw new UserError(`${shown} is not a backup to trust: ${why}. Nothing was written.`);
  };
  async function* parts(): AsyncGenerator<NewFile> {
    const tar = extract();
    const source = createReadStream(file);
    const unzip = createGunzip();
    const stop = (error: Error): void => void tar.destroy(error);
    source.on('error', stop);
    unzip.on('error', stop);
    source.pipe(unzip).pipe(tar);
    let awaited: readonly { readonly name: string; readonly bytes: number; readonly sha256: string }[] = [];
    let at = 0;
    try {
      for await (const entry of tar) {
        const { name, type, size = 0 } = entry.header;
        if (type !== 'file') refuse(`\`${name}\` is a ${type} and no file`);
        if (!manifest) {
          if (name !== MANIFEST_NAME || size > LARGEST_MANIFEST) refuse('it does not begin with a manifest');
          const read = readBackupManifest((await bytesOf(entry, size)).toString('utf8'));
          if (typeof read === 'string') refuse(read);
          manifest = read as BackupManifest;
          awaited = [
            ...(manifest.history ? [{ name: HISTORY_NAME, ...manifest.history }] : []),
            ...manifest.files.map((one) => ({ ...one, name: FILES_FOLDER + one.path })),
          ];
          continue;
        }
        const wanted = awaited[at++];
        if (!wanted || wanted.name !== name || wanted.bytes !== size)
          refuse(`\`${name}\` is not what its manifest says comes there`);
        if (size > LARGEST_PART) refuse(`\`${name}\` is over 2 GB`);
        const bytes = await bytesOf(entry, size);
        if (createHash('sha256').update(bytes).digest('hex') !== wanted?.sha256) refuse(`\`${name}\` is not as it was written`);
        yield { path: name === HISTORY_NAME ? name : name.slice(FILES_FOLDER.length), bytes };
      }
    } catch (error) {
      if (error instanceof UserError) throw error;
      refuse(`it is damaged (${error instanceof Error ? error.message : String(error)})`);
    } finally {
      source.destroy();
    }
    if (!manifest) refuse('there is nothing in it');
    if (at < awaited.length) refuse(`it ends before \`${awaited[at]?.name}\``);
  }
  return { files: parts(), manifest: () => manifest ?? refuse('it has no manifest') };
}

async function bytesOf(entry: AsyncIterable<unknown>, size: number): Promise<Buffer> {
  const bytes = Buffer.alloc(size);
  let at = 0;
  for await (const chunk of entry) at += (chunk as Buffer).copy(bytes, at);
  return bytes.subarray(0, at);
}

/** The two bytes that every gzip begins with (RFC 1952, 2.3.1). */
export const isPacked = (head: Uint8Array): boolean => head[0] === 0x1f && head[1] === 0x8b;
