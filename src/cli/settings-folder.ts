import path from 'node:path';
import type { Io } from './io.js';

/** Where this user's own settings of the program lie; undefined for a user without a home. */
export function settingsFolder(env: Io['env']): string | undefined {
  const given = process.platform === 'win32' ? env.APPDATA : env.XDG_CONFIG_HOME;
  if (given && path.isAbsolute(given)) return path.join(given, 'shellbook');
  const home = env.HOME ?? env.USERPROFILE;
  return home && path.isAbsolute(home) ? path.join(home, '.config', 'shellbook') : undefined;
}

/** The list of keys in it. */
export const OWN_KEYS = 'known-keys.yaml';

/** Keys that this user knows beside those of a store: for whoever has books, but no store. */
export function ownKeysFile(env: Io['env']): string | undefined {
  const folder = settingsFolder(env);
  return folder && path.join(folder, OWN_KEYS);
}
