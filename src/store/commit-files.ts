import { UserError } from '../user-error.js';
import { askGit, GitFailed, runGit } from './git.js';

/**
 * Commits these files of the store and no others, whatever else is staged. Gives the commit; undefined where nothing in them
 * differs. Throws {@link UserError} with what Git said where it cannot be done; the files stay as they were written.
 */
export async function commitFiles(root: string, files: readonly string[], message: string): Promise<string | undefined> {
  const trusted = { trusted: true };
  try {
    await runGit(root, ['add', '--', ...files], trusted);
    const staged = await askGit(root, ['diff', '--cached', '--name-only', '--', ...files], trusted);
    if (staged === '') return undefined;
    await runGit(root, ['commit', '--quiet', '--only', '--file=-', '--', ...files], { ...trusted, input: `${message}\n` });
    return await askGit(root, ['rev-parse', 'HEAD'], trusted);
  } catch (error) {
    if (!(error instanceof GitFailed)) throw error;
    const said = error.status === null ? 'Git is not installed' : error.said.split('\n')[0];
    throw new UserError(`Written, but not committed: ${said}. Commit it by hand: git add, git commit`);
  }
}
