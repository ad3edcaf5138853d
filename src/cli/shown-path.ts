import path from 'node:path';
import type { Context } from './context.js';

/** A path as a person would type it from where they are. */
export function shownPath(file: string, context: Context): string {
  const relative = path.relative(context.io.cwd, file);
  return relative === '' ? 'this folder' : relative.startsWith(`..${path.sep}..`) ? file : relative;
}
