import { accessSync, chmodSync, constants, lstatSync, mkdirSync, mkdtempSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import path from 'node:path';

/** A folder of our own for what is unpacked once, and whether it has to go when we are done. */
export interface PrivateFolder {
  readonly folder: string;
  readonly temporary: boolean;
}

/**
 * `shellbook/<name>` in the user's cache: ours, closed to others, and no link to somewhere else. Whoever else may write there could
 * put a program of theirs in the browser's place, so a folder that is not so is not used: a fresh temporary one is.
 */
export function privateFolder(name: string, environment: NodeJS.ProcessEnv = process.env): PrivateFolder {
  const cache = environment.XDG_CACHE_HOME;
  const root = cache && path.isAbsolute(cache) ? cache : path.join(homedir(), '.cache');
  const top = path.join(root, 'shellbook');
  const folder = path.join(top, name);
  try {
    mkdirSync(root, { recursive: true });
    for (const one of [top, folder]) {
      try {
        mkdirSync(one, { mode: 0o700 });
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
      }
      if (!isOurs(one)) return temporaryFolder();
    }
    accessSync(folder, constants.W_OK | constants.X_OK);
    return { folder, temporary: false };
  } catch {
    return temporaryFolder();
  }
}

/**
 * `shellbook-shared/<name>` in root's place for what can be made again: written by root alone, and read by the user that root's browser is run
 * as. Undefined where others could write there.
 */
export function sharedFolder(name: string, environment: NodeJS.ProcessEnv = process.env): string | undefined {
  const cache = environment.XDG_CACHE_HOME;
  const root = cache && path.isAbsolute(cache) && isPassable(cache) ? cache : '/var/cache';
  const top = path.join(root, 'shellbook-shared');
  try {
    for (const one of [top, path.join(top, name)]) {
      mkdirSync(one, { recursive: true, mode: 0o755 });
      const found = lstatSync(one);
      if (!found.isDirectory() || found.uid !== process.getuid?.() || (found.mode & 0o022) !== 0) return undefined;
    }
    return path.join(top, name);
  } catch {
    return undefined;
  }
}

/** Whether everybody can go through it and the folders above it. */
function isPassable(folder: string): boolean {
  for (let at = folder; ; at = path.dirname(at)) {
    const found = lstatSync(at, { throwIfNoEntry: false });
    if (found && (found.mode & 0o001) === 0) return false;
    if (path.dirname(at) === at) return true;
  }
}

function isOurs(folder: string): boolean {
  const stat = lstatSync(folder);
  if (!stat.isDirectory()) return false;
  const user = process.getuid?.();
  if (user === undefined) return true;
  if (stat.uid !== user) return false;
  // Where others could write, what lies in it may be theirs; where they could only read, closing it is enough.
  if ((stat.mode & 0o022) !== 0) return false;
  if ((stat.mode & 0o055) !== 0) chmodSync(folder, 0o700);
  return true;
}

function temporaryFolder(): PrivateFolder {
  return { folder: mkdtempSync(path.join(tmpdir(), 'shellbook-')), temporary: true };
}
