import { repositoryOf } from './git/repository.js';
import { beside, headName } from './uncommitted.js';
import { workFiles } from './work-files.js';

/** What every file of a store holds. */
export interface FileIds {
  /** Path relative to the store → Git’s name for its contents as they lie there. */
  readonly ids: ReadonlyMap<string, string>;
  /** Files that differ from the last commit, in order; undefined outside Git. */
  readonly uncommitted?: readonly string[];
  /** The repository’s own folder; undefined outside Git. */
  readonly gitDir?: string;
}

/** Record files and pictures of a store by contents. A file that looks as it did last time is not read again. */
export async function fileIds(root: string): Promise<FileIds> {
  const repository = repositoryOf(root);
  if (!repository) {
    const files = await workFiles(root, { objects: 'sha1' });
    return { ids: new Map([...files].flatMap(([file, { id }]) => (id === undefined ? [] : [[file, id] as const]))) };
  }
  const { ids, different } = await beside(repository, root, headName(repository));
  return { ids, uncommitted: different, gitDir: repository.gitDir };
}
