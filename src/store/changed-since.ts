import { runGit } from './git.js';
import { resolveRevision } from './revision.js';

/**
 * Shells that may be judged otherwise than at a revision: those of which a file differs, committed or not; all of them (`'all'`) where
 * the library or the shop file does. Throws where there is no such revision.
 */
export async function changedSince(root: string, revision: string): Promise<ReadonlySet<string> | 'all'> {
  const commit = await resolveRevision(root, revision);
  const [tracked, untracked] = await Promise.all([
    runGit(root, ['diff', '--name-only', '-z', '--no-renames', '--no-ext-diff', '--relative', commit, '--', '.']),
    runGit(root, ['ls-files', '-z', '--others', '--', '.']),
  ]);
  const files = `${tracked.toString('utf8')}${untracked.toString('utf8')}`.split('\0').filter((file) => file !== '');
  if (files.some((file) => file === 'shop.yaml' || file.startsWith('library/'))) return 'all';
  return new Set(files.flatMap((file) => /^shells\/([^/]+)\//u.exec(file)?.[1] ?? []));
}
