import { accessSync, constants } from 'node:fs';
import { FIRST_UID, UIDS } from '../../store/own/folder.js';

/** Another user whom the browser is run as, and how to become them. */
export interface LoweredUser {
  readonly uid: number;
  /** Program and arguments that stand before the browser's own. */
  readonly command: string;
  readonly before: readonly string[];
}

/** `setpriv` of util-linux, which Linux distributions carry. */
const SETPRIV = ['/usr/bin/setpriv', '/bin/setpriv'];

/**
 * Chromium has no sandbox for root. So root's browser is run as a user that owns nothing else, inside the sandbox; it ends with the thread that
 * started it. Undefined for everybody else, and where the system has no way to.
 */
export function loweredUser(user = process.getuid?.()): LoweredUser | undefined {
  if (user !== 0 || process.platform !== 'linux') return undefined;
  const command = SETPRIV.find(isProgram);
  if (command === undefined) return undefined;
  const uid = FIRST_UID + (process.pid % UIDS);
  return { uid, command, before: [`--reuid=${uid}`, `--regid=${uid}`, '--clear-groups', '--no-new-privs', '--'] };
}

function isProgram(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
