import { nearest } from '../source/nearest.js';
import { UserError } from '../user-error.js';
import { askGit, GitFailed } from './git.js';

/** A day, or a moment on it with or without an offset: ISO 8601. */
const DATE = /^(\d{4}-\d{2}-\d{2})(?:[T ](\d{2}:\d{2}(?::\d{2})?)(Z|[+-]\d{2}:?\d{2})?)?$/u;

/** A commit's full id. */
const COMMIT = /^[0-9a-f]{40}(?:[0-9a-f]{24})?$/u;

/**
 * The commit that a person means: a commit's id or its beginning, a tag, a branch, or a date, which means the last commit up to the
 * end of that day by the committer's own calendar. Throws {@link UserError} with the nearest tags where there is none.
 */
export async function resolveRevision(root: string, revision: string): Promise<string> {
  // Git takes what begins with a dash for an option, and `..` for a range.
  if (revision !== '' && !/^-|\.\.|[\p{Cc}\s:?*[\\]/u.test(revision)) {
    const found = await commitOf(root, revision);
    if (found !== undefined) return found;
  }
  const date = DATE.exec(revision.trim());
  if (date) return commitOn(root, revision.trim(), date);
  throw new UserError(await noSuchRevision(root, revision));
}

async function commitOf(root: string, revision: string): Promise<string | undefined> {
  for (const name of [`refs/tags/${revision}`, revision]) {
    try {
      const told = await askGit(root, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${name}^{commit}`]);
      const commit = told.split('\n').at(-1) ?? '';
      if (COMMIT.test(commit)) return commit;
    } catch (error) {
      if (!(error instanceof GitFailed) || error.status === null) throw new UserError(noGit(root));
    }
  }
  return undefined;
}

async function commitOn(root: string, said: string, [, day = '', time, offset]: RegExpExecArray): Promise<string> {
  let log: string;
  try {
    log = await askGit(root, ['log', '--format=%H %cI', 'HEAD', '--']);
  } catch {
    throw new UserError(`The store at ${root} has no commit yet, so there is nothing as of ${said}.`);
  }
  const until = offset === undefined ? undefined : Date.parse(said.replace(' ', 'T'));
  const local = time === undefined ? `${day}T99` : `${day}T${time.length === 5 ? `${time}:59` : time}`;
  const commits = log.split('\n').map((line) => line.split(' ') as [string, string]);
  const found = commits.find(([, at]) => (until === undefined ? at.slice(0, 19) <= local : Date.parse(at) <= until));
  if (found) return found[0];
  throw new UserError(`No commit on or before ${said}: the first is of ${(commits.at(-1)?.[1] ?? '').slice(0, 10)}.`);
}

const noGit = (root: string): string =>
  `The store at ${root} does not lie in a Git work tree, or Git is not installed, so it has no revisions.`;

async function noSuchRevision(root: string, revision: string): Promise<string> {
  let tags: readonly string[];
  try {
    tags = (await askGit(root, ['tag', '--list'])).split('\n').filter((one) => one !== '');
  } catch {
    return noGit(root);
  }
  const close = nearest(revision, tags);
  const known =
    close.length > 0 ? ` Did you mean ${close.join(' or ')}?` : tags.length > 0 ? ` Tags: ${tags.slice(-5).join(', ')}.` : '';
  return `No revision \`${revision}\` in the store's history, expected a commit, a tag or a date as 2026-02-12.${known}`;
}
