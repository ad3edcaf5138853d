import { askGit } from './git.js';

/** The top folder of the Git work tree that a folder lies in; undefined where it lies in none. */
export async function topOfWorkTree(folder: string): Promise<string | undefined> {
  const top = await askGit(folder, ['rev-parse', '--show-toplevel']).catch(() => '');
  return top === '' ? undefined : top;
}
