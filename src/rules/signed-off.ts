import type { Model } from '../model/shell.js';

/** Every stage of the library has a sign-off: what only describes is asked for with a note then. */
export function isSignedOff({ library, shell }: Model): boolean {
  const signed = new Set(shell.signoffs.map(({ stage }) => stage));
  return library.stages.length > 0 && library.stages.every(({ id }) => signed.has(id));
}
