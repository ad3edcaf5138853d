import { existsSync, statSync } from 'node:fs';
import path from 'node:path';
import { UserError } from '../user-error.js';

/** A store is a folder with this file in it. */
const SHOP_FILE = 'shop.yaml';

const isStore = (dir: string): boolean => existsSync(path.join(dir, SHOP_FILE));

/**
 * The store to work on: the one named, else the nearest upward from `cwd`, else `records/` in it.
 * Throws {@link UserError} where there is none.
 */
export function findStore(cwd: string, named?: string): string {
  if (named !== undefined) {
    const dir = path.resolve(cwd, named);
    if (isStore(dir)) return dir;
    const why = existsSync(dir) && statSync(dir).isDirectory() ? `it has no ${SHOP_FILE}` : 'there is no such folder';
    throw new UserError(`No store at ${named}: ${why}. Name another with --store, or make one: shellbook new-store ${named}`);
  }
  for (let dir = path.resolve(cwd); ; dir = path.dirname(dir)) {
    if (isStore(dir)) return dir;
    if (path.dirname(dir) === dir) break;
  }
  const fallback = path.resolve(cwd, 'records');
  if (isStore(fallback)) return fallback;
  throw new UserError(
    `No store here: neither this folder nor one above it has a ${SHOP_FILE}, and there is no records/ folder with one. ` +
      'Name one with --store DIR, or make one: shellbook new-store records',
  );
}
