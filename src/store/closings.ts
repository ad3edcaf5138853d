import { existsSync } from 'node:fs';
import path from 'node:path';
import { UserError } from '../user-error.js';
import { actGit, userSetting } from './git/act.js';
import { GitFailed } from './git/failed.js';
import { askGit, askQuietly, at, requireRepository } from './git/look.js';
import { headOf, isUnborn, repositoryOf } from './git/repository.js';

type Env = Readonly<Record<string, string>>;

/** A tag that closed a shell. */
export interface ClosingTag {
  readonly name: string;
  /** A for the first close-out, then B, C … */
  readonly revision: string;
  /** The commit that it stands on. */
  readonly commit: string;
  /** ISO 8601, of the tag. */
  readonly date: string;
}

/** `OV-021-closed`, then `OV-021-closed-B`, `OV-021-closed-C` … */
export const closingTagName = (shell: string, revision: string): string =>
  `${shell}-closed${revision === 'A' ? '' : `-${revision}`}`;

/** 1 → A, 26 → Z, 27 → AA. */
export function revisionLetter(count: number): string {
  const letter = String.fromCharCode(65 + ((count - 1) % 26));
  return count <= 26 ? letter : revisionLetter(Math.floor((count - 1) / 26)) + letter;
}

/** Tags that closed shells of this repository, by shell, the first first. Lightweight tags of such a name count too. */
export async function closingTags(root: string): Promise<ReadonlyMap<string, readonly ClosingTag[]>> {
  const format = ['%(refname:strip=2)', '%(objectname)', '%(*objectname)', '%(creatordate:iso-strict)'].join('%09');
  if (!repositoryOf(root)) return new Map();
  const told = await askGit(root, ['for-each-ref', `--format=${format}`, 'refs/tags/']);
  const tags = new Map<string, ClosingTag[]>();
  for (const line of told.split('\n')) {
    const [name = '', object = '', peeled = '', date = ''] = line.split('\t');
    const [, shell, letters] = /^(.+)-closed(?:-([A-Z]+))?$/u.exec(name) ?? [];
    if (shell === undefined) continue;
    const tag = { name, revision: letters ?? 'A', commit: peeled === '' ? object : peeled, date };
    tags.set(shell, [...(tags.get(shell) ?? []), tag].sort(byRevision));
  }
  return tags;
}

const byRevision = (a: ClosingTag, b: ClosingTag): number =>
  a.revision.length - b.revision.length || (a.revision < b.revision ? -1 : 1);

/** Throws {@link UserError} with what to do where Git could not take a close-out of this store. */
export async function readyToClose(root: string, env: Env = {}): Promise<void> {
  const repository = repositoryOf(root);
  if (!repository)
    throw new UserError(`${root} does not lie in a Git work tree, and closing is a commit and a tag in Git. Start one: git init`);
  if (repository.whole === 'shallow')
    throw new UserError(
      'This clone is shallow: earlier commits are missing, and with them earlier close-outs. Fetch them: git fetch --unshallow --tags',
    );
  if ('commit' in headOf(repository))
    throw new UserError('Git is not on a branch (detached HEAD), where a commit is soon lost. Go to one: git switch main');
  for (const [file, doing] of [
    ['MERGE_HEAD', 'merge'],
    ['CHERRY_PICK_HEAD', 'cherry-pick'],
    ['REVERT_HEAD', 'revert'],
  ] as const) {
    if (existsSync(path.join(repository.gitDir, file)))
      throw new UserError(
        `A ${doing} is under way in this repository. Finish it: git ${doing} --continue; or give it up: git ${doing} --abort`,
      );
  }
  await headCommit(root);
  // Whether Git will have this user write here; then its settings count, the name among them.
  await actGit(repository, ['rev-parse', '--git-dir'], { env });
  for (const [key, variable] of [
    ['user.name', 'GIT_COMMITTER_NAME'],
    ['user.email', 'GIT_COMMITTER_EMAIL'],
  ] as const) {
    const given = env[variable] ?? process.env[variable] ?? (await userSetting(root, key));
    if (!given)
      throw new UserError(
        'Git does not know who you are, and a close-out is signed with a name. Tell it: git config user.name "…" and git config user.email …',
      );
  }
}

/**
 * Commits these files of the store, as they lie there, and nothing else that may be staged. The user’s own hooks and signing apply.
 * Throws {@link UserError} with what Git said; the files are as they were.
 */
export async function commitClosing(root: string, files: readonly string[], message: string, env: Env = {}): Promise<void> {
  const repository = requireRepository(root);
  const input = `${files.map((file) => `${repository.prefix}${file}`).join('\0')}\0`;
  const listed = ['--pathspec-from-file=-', '--pathspec-file-nul'];
  try {
    await actGit(repository, ['add', '--all', ...listed], { env, input });
    await actGit(repository, ['commit', '--quiet', '--only', '--message', message, ...listed], { env, input });
  } catch (error) {
    throw notTaken('did not take the commit', error);
  }
}

/**
 * Makes an annotated tag on a commit, signed where the user’s Git is set up for it (tag.gpgSign). Git makes it at one stroke and only
 * where no tag of that name is there. Throws {@link UserError}.
 */
export async function tagCommit(
  root: string,
  name: string,
  commit: string,
  message: string,
  env: Env = {},
  publicKey?: string,
): Promise<void> {
  if ((await askQuietly(root, ['check-ref-format', `refs/tags/${name}`])) === undefined || name.startsWith('-'))
    throw new UserError(
      `Git takes no tag called \`${name}\`: the shell’s number has signs that a tag may not have. Rename its folder.`,
    );
  try {
    // Git signs by itself, with the key whose public half lies in this file.
    const how = publicKey === undefined ? ['tag', '--annotate'] : [...signedWith(publicKey), 'tag', '--sign'];
    await actGit(requireRepository(root), [...how, '--message', message, '--', name, commit], { env });
  } catch (error) {
    throw notTaken('did not make the tag', error);
  }
}

const signedWith = (publicKey: string): readonly string[] => ['-c', 'gpg.format=ssh', '-c', `user.signingKey=${publicKey}`];

function notTaken(what: string, error: unknown): UserError {
  if (error instanceof GitFailed && error.trouble !== 'said no') return error;
  const said = error instanceof GitFailed ? error.said.replace(/\s+/gu, ' ') : String(error);
  return new UserError(`Git ${what}: ${said || 'it gave no reason'}. Nothing was closed; put it right and close again.`);
}

/** Git’s id of everything in a shell’s folder at a commit; undefined where it was not there. */
export const shellTree = (root: string, commit: string, shell: string): Promise<string | undefined> =>
  askQuietly(root, ['rev-parse', '--verify', '--quiet', '--end-of-options', at(root, commit, `shells/${shell}`)]);

/** Undefined before the first commit, and outside Git. */
export async function headCommit(root: string): Promise<string | undefined> {
  const repository = repositoryOf(root);
  return !repository || isUnborn(repository) ? undefined : askGit(root, ['rev-parse', '--verify', 'HEAD^{commit}']);
}
