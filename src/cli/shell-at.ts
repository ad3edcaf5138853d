import { shellTree } from '../store/closings.js';
import type { Context } from './context.js';
import { type OpenStore, requireShell } from './open.js';

/** Throws with the nearest names where neither the store now nor any of these commits has such a shell. */
export async function requireShellAt(
  store: OpenStore,
  shell: string,
  commits: readonly string[],
  context: Context,
): Promise<void> {
  if (store.loaded.shells.has(shell)) return;
  for (const commit of commits) if ((await shellTree(store.root, commit, shell)) !== undefined) return;
  await requireShell(store, shell, context);
}
