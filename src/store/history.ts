import { realpathSync } from 'node:fs';
import path from 'node:path';
import { runGit } from './git.js';

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
export interface Standing {
  /** Last commit that touched what the shell's record is made of; null where there is none yet. */
  readonly last: Commit | null;
  /** Files of that record that differ from it: paths relative to the store, sorted. */
  readonly uncommitted: readonly string[];
}

const FIELD = '\u001f';
const RECORD = '\u001e';

/** The history of a store, read through Git and never written. */
export class History {
  private constructor(
    private readonly root: string,
    /** The store's folder relative to the work tree's top, with forward slashes and a closing one; empty at the top. */
    private readonly prefix: string,
    /** The repository's own folder (`.git`), absolute. */
    readonly gitDir: string,
  ) {}

  /** Null where the store does not lie in a Git work tree, or where Git is not installed. */
  static async open(root: string): Promise<History | null> {
    try {
      const real = realpathSync(root);
      const told = await text(real, ['rev-parse', '--is-inside-work-tree', '--absolute-git-dir', '--show-prefix']);
      const [inside, gitDir, prefix = ''] = told.split('\n');
      return inside === 'true' && gitDir ? new History(real, prefix, path.resolve(gitDir)) : null;
    } catch {
      return null;
    }
  }

  /** Newest first. Without a shell: everything that touched the store. */
  async commits(shell?: string, atMost?: number): Promise<readonly Commit[]> {
    const format = `--format=${['%H', '%aI', '%an', '%s', '%D'].join('%x1f')}%x1e`;
    const limit = atMost === undefined ? [] : [`--max-count=${Math.trunc(atMost)}`];
    let told: string;
    try {
      told = await text(this.root, ['log', format, '--decorate=full', ...limit, '--', ...pathsOf(shell)]);
    } catch {
      // A work tree without a first commit.
      return [];
    }
    return told.split(RECORD).flatMap((line) => readCommit(line.trimStart()));
  }

  async standing(shell?: string): Promise<Standing> {
    const [newest, uncommitted] = await Promise.all([this.commits(shell, 1), this.uncommitted(shell)]);
    return { last: newest[0] ?? null, uncommitted };
  }

  private async uncommitted(shell?: string): Promise<readonly string[]> {
    const told = await text(this.root, ['status', '--porcelain=v1', '-z', '--untracked-files=all', '--', ...pathsOf(shell)]);
    const files = new Set<string>();
    const entries = told.split('\0');
    for (let i = 0; i < entries.length; i++) {
      const entry = entries[i] as string;
      if (entry.length < 4) continue;
      files.add(this.inStore(entry.slice(3)));
      // A rename is followed by the name that it had.
      if (/^[RC]/u.test(entry)) files.add(this.inStore(entries[++i] ?? ''));
    }
    return [...files].filter((file) => file !== '').sort();
  }

  private inStore(file: string): string {
    return file.startsWith(this.prefix) ? file.slice(this.prefix.length) : file;
  }
}

const text = async (root: string, args: readonly string[]): Promise<string> => (await runGit(root, args)).toString('utf8');

/** What a shell's record is made of, as paths from the store's folder. */
const pathsOf = (shell?: string): readonly string[] =>
  shell === undefined ? ['.'] : [`shells/${shell}`, 'library', 'shop.yaml'];

function readCommit(line: string): readonly Commit[] {
  const [commit, date, author, subject, refs] = line.split(FIELD);
  if (!commit || date === undefined) return [];
  const tags = (refs ?? '').split(', ').flatMap((ref) => /^tag: refs\/tags\/(.+)$/u.exec(ref)?.[1] ?? []);
  return [{ commit, date, author: author ?? '', subject: subject ?? '', tags }];
}
