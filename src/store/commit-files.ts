import { UserError } from '../user-error.js';
import { actGit } from './git/act.js';
import { firstLine, GitFailed } from './git/failed.js';
import { requireRepository } from './git/look.js';

/**
 * Commits these files of the store and no others, whatever else is staged. Gives the commit; undefined where nothing in them
 * differs. Throws {@link UserError} with what Git said where it cannot be done; the files stay as they were written.
 */
export async function commitFiles(root: string, files: readonly string[], message: string): Promise<string | undefined> {
  try {
    const repository = requireRepository(root);
    const named = files.map((file) => `${repository.prefix}${file}`);
    await actGit(repository, ['add', '--', ...named]);
    const staged = await actGit(repository, ['diff', '--cached', '--no-ext-diff', '--name-only', '--', ...named]);
    if (staged === '') return undefined;
    await actGit(repository, ['commit', '--quiet', '--only', '--file=-', '--', ...named], { input: `${message}\n` });
    return await actGit(repository, ['rev-parse', 'HEAD']);
  } catch (error) {
    if (!(error instanceof GitFailed)) throw error;
    const said = error.trouble === 'said no' && error.said !== '' ? firstLine(error.said) : error.message.replace(/\.$/u, '');
    throw new UserError(`Written, but not committed: ${said}. Commit it by hand: git add, git commit`);
  }
}
