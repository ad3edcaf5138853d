import path from 'node:path';
import { UserError } from '../user-error.js';
import { askGit, GitFailed, runGit } from './git.js';

/**
 * Lays a store out in a folder of its own as it stood at a commit, with the history that led there: a clone, in which no hook, filter or
 * setting of the repository runs. Of photos only those of `shell`. `withTag`: whether tags on that commit count; they may be younger than
 * what was printed from it. Gives the store's folder in it.
 * @throws UserError where the commit is not there
 */
export async function laidOutAt(root: string, commit: string, shell: string, withTag: boolean, folder: string): Promise<string> {
  const clone = path.join(folder, 'store');
  try {
    const [top = '', prefix = ''] = (await askGit(root, ['rev-parse', '--show-toplevel', '--show-prefix'])).split('\n');
    await runGit(folder, ['clone', '--quiet', '--no-checkout', '--no-recurse-submodules', ...QUIET, '--', top, clone]);
    // Only the folder of the store, and of other shells no photos.
    const wanted = [
      `/${prefix}*`,
      `!/${prefix}shells/*/photos/*`,
      `/${prefix}shells/*/photos/*.yaml`,
      `/${prefix}shells/${shell}/photos/*`,
    ];
    await runGit(clone, ['sparse-checkout', 'set', '--no-cone', '--end-of-options', ...wanted]);
    await runGit(clone, ['checkout', '--quiet', '--detach', '--no-recurse-submodules', commit, '--']);
    if (!withTag) {
      const tags = (await askGit(clone, ['tag', '--points-at', commit])).split('\n').filter((tag) => tag !== '');
      for (const tag of tags) await runGit(clone, ['update-ref', '-d', `refs/tags/${tag}`]);
    }
    return path.join(clone, prefix);
  } catch (error) {
    if (!(error instanceof GitFailed)) throw error;
    throw new UserError(`the store cannot be laid out as it was at ${commit.slice(0, 10)}: ${error.message}`);
  }
}

const QUIET = ['core.symlinks=false', 'core.autocrlf=false', 'advice.detachedHead=false'].flatMap((one) => ['-c', one]);
