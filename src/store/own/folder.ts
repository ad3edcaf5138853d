import { existsSync, lstatSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { atEnd } from './at-end.js';
import { hasEnded, ownName } from './owner.js';

/** A folder of this process alone, for as long as it runs. */
export interface OwnFolder {
  readonly folder: string;
  remove(): void;
}

/**
 * A new folder in the system's place for such, closed to others (`shellbook-git-…`). It goes when the process ends; what an earlier one
 * left that was killed goes now.
 */
export function ownFolder(what: string): OwnFolder {
  sweep(what);
  const folder = mkdtempSync(path.join(tmpdir(), `shellbook-${what}-${ownName()}-`));
  const take = (): void => rmSync(folder, { recursive: true, force: true, maxRetries: 8, retryDelay: 20 });
  const callOff = atEnd(() => takeForGood(folder, take));
  return {
    folder,
    remove() {
      callOff();
      take();
    },
  };
}

/** How often, and after how many ms each time, one looks whether a killed process has made its folder again before it was gone. */
const LOOKS = 20;
const BETWEEN_MS = 30;

function takeForGood(folder: string, take: () => void): void {
  for (let i = 0; i < LOOKS; i++) {
    try {
      take();
    } catch {
      // Still written to: once more in a moment.
    }
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, BETWEEN_MS);
    if (!existsSync(folder)) return;
  }
}

/** Numbers that systemd gives to services for as long as they run (systemd.exec, DynamicUser): no person and no file has them. */
export const FIRST_UID = 61_184;
export const UIDS = 4_000;

const swept = new Set<string>();

/** Once for each kind: folders of processes that have ended, if they are ours. */
function sweep(what: string): void {
  const place = tmpdir();
  if (swept.has(what)) return;
  swept.add(what);
  const named = new RegExp(`^shellbook-${what}-(.+)-[^-]{6}$`, 'u');
  try {
    for (const name of readdirSync(place)) {
      const owner = named.exec(name)?.[1];
      if (owner !== undefined && hasEnded(owner) && isOurs(path.join(place, name)))
        rmSync(path.join(place, name), { recursive: true, force: true, maxRetries: 3 });
    }
  } catch {
    // Somebody else’s, or gone in this moment.
  }
}

function isOurs(folder: string): boolean {
  const found = lstatSync(folder);
  const user = process.getuid?.();
  const isLent = user === 0 && found.uid >= FIRST_UID && found.uid < FIRST_UID + UIDS;
  return found.isDirectory() && (user === undefined || found.uid === user || isLent);
}
