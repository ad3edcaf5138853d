import { type Dirent, readdirSync, readFileSync, statSync } from 'node:fs';
import { lstat, realpath, stat } from 'node:fs/promises';
import path from 'node:path';
import type { StoreText } from '../model/load-types.js';
import { UserError } from '../user-error.js';
import { DEEPEST_FOLDER, decode, isTaken, type Text, TOO_DEEP, takenAs, tooLarge } from './taken.js';

/**
 * Reads every YAML file of a store as text, and the sizes of its photos. Stays within the folder: a link that leads out of it, a
 * file that is too large, one that is no UTF-8 and what is no file at all stand in `refused` and are not read.
 * With `shell`, other shells are passed over; of files, only those come whose text `holds` what is wanted. Throws {@link UserError}
 * where the folder itself cannot be read.
 */
export async function readStoreText(root: string, shell?: string, holds?: (text: string) => boolean): Promise<StoreText> {
  const found: Found = { yaml: [], photos: new Map(), sounds: [], refused: new Map() };
  let real: string;
  try {
    real = await realpath(root);
    await walk({ root: real, inside: '', depth: 0, found, ...(shell === undefined ? {} : { shell }) });
  } catch (error) {
    throw new UserError(`The store at ${root} cannot be read: ${reason(error)}`);
  }
  found.yaml.sort();
  const files = new Map<string, string>();
  for (const file of found.yaml) {
    const text = readRecordText(path.join(real, file));
    if (text.refused !== undefined) found.refused.set(file, text.refused);
    else if (holds === undefined || holds(text.text)) files.set(file, text.text);
  }
  return {
    root,
    files,
    photos: found.photos,
    ...(found.sounds.length > 0 ? { sounds: found.sounds } : {}),
    ...(found.refused.size > 0 ? { refused: found.refused } : {}),
  };
}

interface Found {
  readonly yaml: string[];
  readonly photos: Map<string, number>;
  readonly sounds: string[];
  readonly refused: Map<string, string>;
}

interface Walk {
  readonly root: string;
  /** Folder relative to the root; empty for the root itself. */
  readonly inside: string;
  readonly depth: number;
  readonly found: Found;
  /** The one that is wanted. */
  readonly shell?: string;
}

async function walk(at: Walk): Promise<void> {
  const entries = readdirSync(path.join(at.root, at.inside), { withFileTypes: true });
  for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
    if (entry.name.startsWith('.') || (at.depth === 0 && entry.isDirectory() && !isTaken(entry.name))) continue;
    await visit(at, entry);
  }
}

async function visit(at: Walk, entry: Dirent): Promise<void> {
  const name = at.inside === '' ? entry.name : `${at.inside}/${entry.name}`;
  const kind = entry.isSymbolicLink()
    ? await linkedKind(at, name)
    : entry.isDirectory()
      ? 'folder'
      : entry.isFile()
        ? 'file'
        : notAFile(at, name);
  if (kind === 'folder') {
    // A folder of that name was meant to be a file.
    if (takenAs(name) === 'yaml')
      at.found.refused.set(name, 'This is a folder with the name of a record file: rename it, or put a file there');
    if (at.inside === 'shells' && at.shell !== undefined && entry.name !== at.shell) return;
    if (at.depth >= DEEPEST_FOLDER) at.found.refused.set(name, TOO_DEEP);
    else await walk({ ...at, inside: name, depth: at.depth + 1 });
  } else if (kind === 'file') {
    const taken = takenAs(name);
    if (taken === 'yaml') at.found.yaml.push(name);
    else if (taken === 'photo') at.found.photos.set(name, (await stat(path.join(at.root, name))).size);
    else if (taken === 'sound') at.found.sounds.push(name);
  }
}

/** A pipe, a socket or a device would hold whoever reads it. */
function notAFile({ found }: Walk, name: string): undefined {
  if (takenAs(name) !== undefined)
    found.refused.set(name, 'This is a pipe, a socket or a device and no file, so it is not read: take it out');
}

/** A link is followed to a file within the store, never to a folder (it could lead round in a circle), never out. */
async function linkedKind(at: Walk, name: string): Promise<'file' | undefined> {
  const refuse = (why: string): undefined => void at.found.refused.set(name, why);
  try {
    const target = await realpath(path.join(at.root, name));
    if (!target.startsWith(at.root + path.sep))
      return refuse('This is a link that leads out of the store, so it is not read: copy the file in');
    const found = await lstat(target);
    if (found.isFile()) return 'file';
    return found.isDirectory() ? refuse('This is a link to a folder, so it is not read: put the files here') : notAFile(at, name);
  } catch {
    return refuse('This is a link to nowhere, so it is not read: take it out');
  }
}

/** One record file, by its whole path. At once: thousands of small files, each handed to another thread and back, take twice as long. */
function readRecordText(file: string): Text {
  try {
    const found = statSync(file);
    if (!found.isFile()) return { refused: 'This is not a file, so it is not read' };
    const refused = tooLarge(found.size);
    if (refused !== undefined) return { refused };
    return decode(readFileSync(file));
  } catch (error) {
    return { refused: `This file cannot be read: ${reason(error)}` };
  }
}

/** Why a file could not be reached, in words. */
export function reason(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code;
  if (code === 'ENOENT') return 'it is not there';
  if (code === 'EACCES' || code === 'EPERM') return 'no permission';
  if (code === 'ENOTDIR') return 'it is not a folder';
  if (code === 'ENOSPC' || code === 'EDQUOT') return 'the disk is full';
  if (code === 'EROFS') return 'the disk is read-only';
  if (code === 'EISDIR') return 'it is a folder';
  return code ?? 'unknown reason';
}
