import { UserError } from '../user-error.js';
import { hiddenFromGit } from './git/hidden.js';
import { requireRepository } from './git/look.js';
import { beside, headName } from './uncommitted.js';

/**
 * Files of a shell's record that a close-out has to commit: every one is read anew and held against the last commit. Throws
 * {@link UserError} where Git is told to pass over one of them, and would close without it.
 */
export async function toCommit(root: string, shell: string): Promise<readonly string[]> {
  const repository = requireRepository(root);
  const { different } = await beside(repository, root, headName(repository), { shell, careful: true });
  const { ignored, unwatched } = await hiddenFromGit(repository, different);
  if (ignored.length > 0)
    throw new UserError(
      `Git ignores ${listed(ignored)}, so the close-out would miss it: nothing was closed. Take it out of .gitignore, or add it: git add --force -- ${ignored[0]}`,
    );
  if (unwatched.length > 0)
    throw new UserError(
      `Git does not watch ${listed(unwatched)}, which differs from the last commit: nothing was closed. Let it look again: git update-index --no-skip-worktree --no-assume-unchanged -- ${unwatched[0]}`,
    );
  return different;
}

/** Throws {@link UserError} where a file of the record is not in the commit as it lies in the store. */
export async function refuseUnlessCommitted(root: string, shell: string, commit: string): Promise<void> {
  const { different } = await beside(requireRepository(root), root, commit, { shell, careful: true });
  if (different.length === 0) return;
  throw new UserError(
    `The commit ${commit.slice(0, 8)} does not hold ${listed(different)} as it lies in the store, so it was not closed: a filter or a hook changed it on the way, or somebody in this moment. Look: git diff ${commit.slice(0, 8)} -- ${different[0]}`,
  );
}

const listed = (files: readonly string[]): string =>
  files.length === 1 ? (files[0] as string) : `${files[0]} and ${files.length - 1} more`;
