import { actGit } from './act.js';
import { GitFailed } from './failed.js';
import type { Repository } from './repository.js';

/** Files that Git is told to pass over, by how it is told; paths from the store. */
export interface PassedOver {
  /** New files that a `.gitignore` or the like names. */
  readonly ignored: readonly string[];
  /** Marked "skip-worktree" or "assume-unchanged". */
  readonly unwatched: readonly string[];
}

/** Which of these files of the store a commit would leave out without a word. Throws {@link GitFailed}. */
export async function hiddenFromGit(repository: Repository, files: readonly string[]): Promise<PassedOver> {
  if (files.length === 0) return { ignored: [], unwatched: [] };
  const { prefix } = repository;
  const input = `${files.map((file) => `${prefix}${file}`).join('\0')}\0`;
  const [ignored, marks] = await Promise.all([
    actGit(repository, ['check-ignore', '-z', '--stdin'], { input, literal: false }).catch(none),
    actGit(repository, ['ls-files', '-v', '-z', '--', ...(prefix === '' ? [] : [prefix])]),
  ]);
  const wanted = new Set(files);
  const ours = (file: string): readonly string[] => {
    const inStore = file.startsWith(prefix) ? file.slice(prefix.length) : file;
    return wanted.has(inStore) ? [inStore] : [];
  };
  return {
    ignored: ignored.split('\0').flatMap(ours),
    // `S`: skip-worktree. A small letter: assume-unchanged.
    unwatched: marks.split('\0').flatMap((line) => (/^[a-zS] /u.test(line) ? ours(line.slice(2)) : [])),
  };
}

function none(error: unknown): string {
  if (error instanceof GitFailed && error.trouble === 'said no' && error.said === '') return '';
  throw error;
}
