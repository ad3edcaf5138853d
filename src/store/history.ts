import { askGit, gitText, inTop } from './git/look.js';
import { isUnborn, type Repository, repositoryOf } from './git/repository.js';
import { beside, headName } from './uncommitted.js';

/** One commit that touched a shell, its library or its shop file. */
export interface Commit {
  readonly commit: string;
  /** ISO 8601 with the author's offset. */
  readonly date: string;
  readonly author: string;
  readonly subject: string;
  readonly tags: readonly string[];
}

/** Where a shell's record stands in Git. */
export interface GitStanding {
  /** Last commit that touched what the shell's record is made of; null where there is none yet. */
  readonly last: Commit | null;
  /** Files of that record that differ from it: paths relative to the store, sorted. */
  readonly uncommitted: readonly string[];
}

const FIELD = '\u001f';
const RECORD = '\u001e';

/** The history of a store, read through Git and never written. Every question throws {@link GitFailed} where Git cannot answer. */
export class History {
  private constructor(
    private readonly root: string,
    private readonly repository: Repository,
  ) {}

  /** Null where the store does not lie in a Git work tree. Throws {@link GitFailed} where it does, and cannot be read. */
  static open(root: string): History | null {
    const repository = repositoryOf(root);
    return repository ? new History(root, repository) : null;
  }

  /** The repository's own folder (`.git`), absolute. */
  get gitDir(): string {
    return this.repository.gitDir;
  }

  /** What of the past is not here, as a sentence; undefined where all of it is. */
  get missing(): string | undefined {
    return MISSING[this.repository.whole];
  }

  /** Newest first. Without a shell: everything that touched the store. */
  async commits(shell?: string, atMost?: number): Promise<readonly Commit[]> {
    if (isUnborn(this.repository)) return [];
    const format = `--format=${['%H', '%aI', '%an', '%s', '%D'].join('%x1f')}%x1e`;
    const limit = atMost === undefined ? [] : [`--max-count=${Math.trunc(atMost)}`];
    const how = ['log', format, '--decorate=full', ...limit, 'HEAD', '--', ...inTop(this.root, pathsOf(shell))];
    return (await gitText(this.root, how)).split(RECORD).flatMap((line) => readCommit(line.trimStart()));
  }

  async standing(shell?: string): Promise<GitStanding> {
    // A damaged repository answers here already: nothing is left running that fails with nobody to hear it.
    const head = headName(this.repository);
    const [newest, { different }] = await Promise.all([
      this.commits(shell, 1),
      beside(this.repository, this.root, head, shell === undefined ? {} : { shell }),
    ]);
    return { last: newest[0] ?? null, uncommitted: different };
  }

  /** The commit that the work tree is of; null before the first. */
  async head(): Promise<string | null> {
    return isUnborn(this.repository) ? null : askGit(this.root, ['rev-parse', '--verify', 'HEAD^{commit}']);
  }
}

const MISSING: Readonly<Record<Repository['whole'], string | undefined>> = {
  whole: undefined,
  shallow:
    'This clone is shallow: its earlier commits, and close-outs among them, are not here. Fetch them: git fetch --unshallow --tags',
  partial: 'This clone is partial: contents of its earlier commits may not be here. Fetch them: git fetch --refetch --no-filter',
};

/** What a shell's record is made of, as paths from the store's folder. */
export const pathsOf = (shell?: string): readonly string[] =>
  shell === undefined ? ['.'] : [`shells/${shell}`, 'library', 'shop.yaml'];

function readCommit(line: string): readonly Commit[] {
  const [commit, date, author, subject, refs] = line.split(FIELD);
  if (!commit || date === undefined) return [];
  const tags = (refs ?? '').split(', ').flatMap((ref) => /^tag: refs\/tags\/(.+)$/u.exec(ref)?.[1] ?? []);
  return [{ commit, date, author: author ?? '', subject: subject ?? '', tags }];
}
