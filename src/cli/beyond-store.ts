import { gitText, inTop } from '../store/git/look.js';
import type { Repository } from '../store/git/repository.js';

const COMMIT = '\u001e';

/** Commits of a shell's records that also changed what lies outside the store. None where the store is its repository. */
export async function beyondStore(root: string, shell: string, { prefix }: Repository): Promise<ReadonlySet<string>> {
  if (prefix === '') return new Set();
  const asked = ['log', '-z', '--name-only', '--full-diff', '--no-renames', `--format=${COMMIT}%H`, 'HEAD', '--'];
  const told = await gitText(root, [...asked, ...inTop(root, [`shells/${shell}`])]);
  return new Set(
    told.split(COMMIT).flatMap((part) => {
      const [commit = '', ...files] = part.split('\0').map((one) => one.replace(/^\n/u, ''));
      return files.some((file) => file !== '' && !file.startsWith(prefix)) ? [commit.trim()] : [];
    }),
  );
}
