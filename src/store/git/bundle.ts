import { createWriteStream } from 'node:fs';
import { UserError } from '../../user-error.js';
import { gitAlone } from './alone.js';
import { askGit, runGit } from './look.js';

/** Branches and tags with all that led to them, as one file of Git’s own. False where there is no commit yet. */
export async function writeBundle(root: string, target: string): Promise<boolean> {
  const refs = await askGit(root, ['for-each-ref', '--count=1', 'refs/heads/', 'refs/tags/']);
  if (refs === '') return false;
  const out = createWriteStream(target, { flags: 'wx' });
  await runGit(root, ['bundle', 'create', '--quiet', '-', '--branches', '--tags'], { take: (bytes) => void out.write(bytes) });
  await new Promise<void>((resolve, reject) => out.on('error', reject).end(resolve));
  return true;
}

/**
 * Starts a repository in a folder with the history of a bundle, standing on a branch of it (or on a commit) with nothing checked out: the
 * files lie there already. Every object is looked through as it comes in. Throws {@link UserError} where the bundle is not sound.
 */
export async function unpackBundle(
  folder: string,
  bundle: string,
  { branch, commit }: { readonly branch: string | null; readonly commit: string },
): Promise<void> {
  const git = async (...args: readonly string[]): Promise<string> => {
    const { status, out, said } = await gitAlone(folder, args);
    if (status === 0) return out;
    throw new UserError(`The history in it cannot be read: ${said || args[0]}. Nothing was written.`);
  };
  if (branch !== null) await git('check-ref-format', `refs/heads/${branch}`);
  await git(
    'init',
    '--quiet',
    '--template=',
    '--initial-branch=main',
    ...(commit.length === 64 ? ['--object-format=sha256'] : []),
  );
  await git('config', 'core.autocrlf', 'false');
  await git('bundle', 'verify', '--quiet', bundle);
  const all = ['+refs/heads/*:refs/heads/*', '+refs/tags/*:refs/tags/*'];
  await git('fetch', '--quiet', '--no-tags', '--update-head-ok', '--no-write-fetch-head', '--no-auto-gc', bundle, ...all);
  const stands = await git(
    'rev-parse',
    '--verify',
    '--quiet',
    '--end-of-options',
    `${branch === null ? commit : `refs/heads/${branch}`}^{commit}`,
  );
  if (stands !== commit) throw new UserError('The history in it does not end where it says: nothing was written.');
  if (branch === null) await git('update-ref', '--no-deref', 'HEAD', commit);
  else await git('symbolic-ref', 'HEAD', `refs/heads/${branch}`);
  await git('read-tree', 'HEAD');
}
