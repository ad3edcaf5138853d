import { dayOf } from '../quantity/day.js';
import { nearest } from '../source/nearest.js';
import { UserError } from '../user-error.js';
import { askGit, askQuietly } from './git/look.js';
import { isUnborn, repositoryOf } from './git/repository.js';

/** A day, or a moment on it with or without an offset: ISO 8601. */
const DATE = /^(\d{4}-\d{2}-\d{2})(?:[T ](\d{2}:\d{2}(?::\d{2})?)(Z|[+-]\d{2}:?\d{2})?)?$/u;

/** Git's full name of an object. */
const COMMIT = /^[0-9a-f]{40}(?:[0-9a-f]{24})?$/u;

/**
 * The commit that a person means: a commit's id or its beginning, a tag, a branch, or a date, which means the last commit up to the
 * end of that day by the committer's own calendar. Throws {@link UserError} with the nearest tags where there is none.
 */
export async function resolveRevision(root: string, revision: string): Promise<string> {
  // Git takes what begins with a dash for an option, and `..` for a range; `@{…}` asks for a log of one machine.
  if (revision !== '' && !/^-|\.\.|[\p{Cc}\s:?*[\\{]/u.test(revision)) {
    const found = await commitOf(root, revision);
    if (found !== undefined) return found;
  }
  const date = DATE.exec(revision.trim());
  if (date) return commitOn(root, revision.trim(), date);
  throw new UserError(await noSuchRevision(root, revision));
}

async function commitOf(root: string, revision: string): Promise<string | undefined> {
  if (!repositoryOf(root)) throw new UserError(noGit(root));
  for (const name of [`refs/tags/${revision}`, revision]) {
    const object = await askQuietly(root, ['rev-parse', '--verify', '--quiet', '--end-of-options', name]);
    // `^name` and the like are no one object.
    if (object === undefined || !COMMIT.test(object)) continue;
    const told = await askQuietly(root, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${object}^{commit}`]);
    const commit = told?.split('\n').at(-1) ?? '';
    if (COMMIT.test(commit)) return commit;
    // A name that is there, of something that is not: of contents it may be said that they are no commit.
    await askGit(root, ['cat-file', '-t', object]);
  }
  return undefined;
}

async function commitOn(root: string, said: string, [, day = '', time, offset]: RegExpExecArray): Promise<string> {
  const repository = repositoryOf(root);
  if (!repository) throw new UserError(noGit(root));
  if (isUnborn(repository)) throw new UserError(`The store at ${root} has no commit yet, so there is nothing as of ${said}.`);
  const log = await askGit(root, ['log', '--format=%H %cI', 'HEAD', '--']);
  const until = offset === undefined ? undefined : Date.parse(said.replace(' ', 'T'));
  const local = time === undefined ? `${day}T99` : `${day}T${time.length === 5 ? `${time}:59` : time}`;
  const commits = log.split('\n').map((line) => line.split(' ') as [string, string]);
  const found = commits.find(([, at]) => (until === undefined ? at.slice(0, 19) <= local : Date.parse(at) <= until));
  if (found) return found[0];
  throw new UserError(`No commit on or before ${said}: the first is from ${dayOf(commits.at(-1)?.[1] ?? '')}.`);
}

const noGit = (root: string): string => `The store at ${root} does not lie in a Git work tree, so it has no revisions.`;

async function noSuchRevision(root: string, revision: string): Promise<string> {
  if (!repositoryOf(root)) return noGit(root);
  const tags = (await askGit(root, ['for-each-ref', '--format=%(refname:strip=2)', 'refs/tags/']))
    .split('\n')
    .filter((one) => one !== '');
  const close = nearest(revision, tags);
  const known =
    close.length > 0 ? ` Did you mean ${close.join(' or ')}?` : tags.length > 0 ? ` Tags: ${tags.slice(-5).join(', ')}.` : '';
  return `No revision \`${revision}\` in the store's history, expected a commit, a tag or a date as 2026-02-12.${known}`;
}
