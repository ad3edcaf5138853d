import { requireRepository } from './git/look.js';
import { resolveRevision } from './revision.js';
import { beside } from './uncommitted.js';

/**
 * Shells that may be judged otherwise than at a revision: those of which a file differs, committed or not; all of them (`'all'`) where
 * the library or the shop file does. Throws where there is no such revision.
 */
export async function changedSince(root: string, revision: string): Promise<ReadonlySet<string> | 'all'> {
  const commit = await resolveRevision(root, revision);
  const { different: files } = await beside(requireRepository(root), root, commit);
  if (files.some((file) => file === 'shop.yaml' || file.startsWith('library/'))) return 'all';
  return new Set(files.flatMap((file) => /^shells\/([^/]+)\//u.exec(file)?.[1] ?? []));
}
