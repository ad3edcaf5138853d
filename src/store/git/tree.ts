import { UserError } from '../../user-error.js';
import { GitFailed } from './failed.js';
import { askQuietly, at, gitText, requireRepository } from './look.js';

/** A file of a tree of Git's. */
export interface TreeFile {
  /** Relative to the store, with forward slashes. */
  readonly path: string;
  /** Git's id of the contents. */
  readonly blob: string;
  readonly bytes: number;
  /** A symbolic link, whose target is not followed. */
  readonly link: boolean;
}

/** Every file of the store in a commit. Throws {@link UserError} where the store was not there yet, or contents were not fetched. */
export async function listTree(root: string, commit: string): Promise<readonly TreeFile[]> {
  // Names are resolved from the commit alone; whether its tree is here, only a look at it says.
  const held = await gitText(root, ['cat-file', '--batch-check=%(objecttype)'], { input: `${commit}^{tree}\n` });
  if (held.trim() !== 'tree') throw lacking(root, `commit ${commit.slice(0, 10)}`);
  const tree = await askQuietly(root, ['rev-parse', '--verify', '--quiet', '--end-of-options', at(root, commit)]);
  if (tree === undefined) throw new UserError(`The store at ${root} was not there yet at ${commit.slice(0, 10)}.`);
  const told = await gitText(root, ['ls-tree', '-r', '-z', '-l', '--full-tree', '--end-of-options', tree]);
  return told.split('\0').flatMap((line) => {
    const [, mode, kind, blob = '', bytes = '', path] = /^(\d+) (\w+) ([0-9a-f]+) +(\w+|-)\t(.*)$/su.exec(line) ?? [];
    if (kind !== 'blob' || path === undefined) return [];
    if (!/^\d+$/u.test(bytes)) throw lacking(root, path);
    return [{ path, blob, bytes: Number(bytes), link: mode === '120000' }];
  });
}

function lacking(root: string, what: string): GitFailed {
  const { whole, top } = requireRepository(root);
  return whole === 'whole'
    ? new GitFailed(
        'damaged',
        what,
        `The history of this store is damaged: the contents of ${what} are missing or cannot be read. Look at it with git -C ${top} fsck; fetch them from another clone.`,
      )
    : new GitFailed(
        'missing',
        what,
        `Part of the history is missing: this clone does not have the contents of ${what}. Fetch them: git fetch --refetch --no-filter`,
      );
}

/** Contents that Git did not give. */
export const lackingBlob = (root: string, blob: string): GitFailed => lacking(root, `object ${blob}`);
