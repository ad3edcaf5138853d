import { createHmac, randomBytes } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import path from 'node:path';

const KEY_BYTES = 32;

/** The user's own folder for what can be made again (XDG Base Directory Specification; %LOCALAPPDATA%; ~/Library/Caches). */
export function userCacheDir({ XDG_CACHE_HOME, LOCALAPPDATA }: NodeJS.ProcessEnv = process.env): string {
  if (XDG_CACHE_HOME && path.isAbsolute(XDG_CACHE_HOME)) return path.join(XDG_CACHE_HOME, 'shellbook');
  if (process.platform === 'win32' && LOCALAPPDATA) return path.join(LOCALAPPDATA, 'shellbook');
  const caches = process.platform === 'darwin' ? path.join('Library', 'Caches') : '.cache';
  return path.join(homedir(), caches, 'shellbook');
}

const keys = new Map<string, Buffer | undefined>();

/**
 * A secret of this user on this machine, made when it is first needed. What was kept is believed only with the mark that this key gives:
 * a repository that comes from elsewhere may bring such files too. Undefined where there is none and none can be made; nothing is kept then.
 */
export function cacheKey(): Buffer | undefined {
  const folder = userCacheDir();
  if (!keys.has(folder)) keys.set(folder, keyIn(folder));
  return keys.get(folder);
}

function keyIn(folder: string): Buffer | undefined {
  const file = path.join(folder, 'key');
  try {
    if (!existsSync(file)) make(folder, file);
    // One that others can read is no secret.
    if (process.platform !== 'win32' && (statSync(file).mode & 0o077) !== 0) return undefined;
    const key = readFileSync(file);
    return key.length === KEY_BYTES ? key : undefined;
  } catch {
    return undefined;
  }
}

/** Another process may be as quick: then its key is there. */
function make(folder: string, file: string): void {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  try {
    writeFileSync(file, randomBytes(KEY_BYTES), { flag: 'wx', mode: 0o600 });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
}

/** The mark of these bytes, hex; of their own kind, so that one cannot stand for another. */
export const markOf = (key: Buffer, bytes: string | Uint8Array): string => createHmac('sha256', key).update(bytes).digest('hex');
