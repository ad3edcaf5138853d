import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { StoreText } from '../model/load-types.js';
import { type KnownKey, readFingerprint, readKeys } from '../signing/known-keys.js';
import { KEYS_FILE } from '../store/layout.js';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import { ownKeysFile } from './settings-folder.js';
import { shownPath } from './shown-path.js';

/** The keys that a store says its shop signs with. @throws UserError where its list cannot be read */
export function keysOfStore({ root, files }: Pick<StoreText, 'root' | 'files'>, context: Context): readonly KnownKey[] {
  const text = files.get(KEYS_FILE);
  const where = shownPath(root, context);
  return text === undefined ? [] : sound(path.join(where, KEYS_FILE), readKeys(text, `the store in ${where}`));
}

/** The keys in the user's own settings. @throws UserError where their list cannot be read */
export async function ownKeys({ io: { env } }: Context): Promise<readonly KnownKey[]> {
  const file = ownKeysFile(env);
  const text = file && (await readFile(file, 'utf8').catch(() => undefined));
  return file === undefined || text === undefined ? [] : sound(file, readKeys(text, 'your own list of keys'));
}

/** A fingerprint that was typed from the shop's paper. @throws UserError where it is not a whole one */
export function typedKey(typed: string): KnownKey {
  const fingerprint = readFingerprint(typed);
  if (fingerprint === undefined)
    throw new UserError(
      `\`${typed}\` is no fingerprint of a key: expected 64 digits (0-9, a-f), as on the cover of a signed book`,
    );
  return { fingerprint, name: '', knownTo: 'what you typed' };
}

function sound(file: string, read: ReturnType<typeof readKeys>): readonly KnownKey[] {
  if ('keys' in read) return read.keys;
  throw new UserError(`${file} ${read.fault}. Each key is written as {fingerprint: …, name: …, from: 2026-01-05}`);
}
