import { UserError } from '../../user-error.js';

/**
 * Why Git could not answer. `not installed`: there is no Git. `refused`: the system or Git keeps this user from the repository.
 * `missing`: objects were never fetched. `damaged`: they cannot be read. `said no`: it answered, and the answer is no.
 */
export type Trouble = 'not installed' | 'refused' | 'missing' | 'damaged' | 'said no';

/** Git could not answer; the message is a whole sentence, with what to do. */
export class GitFailed extends UserError {
  constructor(
    readonly trouble: Trouble,
    /** What Git wrote to standard error. */
    readonly said: string,
    message: string,
  ) {
    super(message);
  }
}

export const notInstalled = (): GitFailed =>
  new GitFailed(
    'not installed',
    '',
    'Git is not installed, and the history of this store is kept in Git. Install Git, then ask again.',
  );

export const refused = (what: string, why: string): GitFailed =>
  new GitFailed(
    'refused',
    why,
    `The history of this store cannot be read: no permission for ${what}. Ask its owner for the right to read it.`,
  );

export const damaged = (repository: string, why: string): GitFailed =>
  new GitFailed(
    'damaged',
    why,
    `The history of this store is damaged: ${why}. Look at it with git -C ${repository} fsck; fetch what is broken from another clone.`,
  );

/** What Git itself says where files of its own belong to somebody else. */
export const ofAnotherUser = (repository: string, said: string): GitFailed =>
  new GitFailed(
    'refused',
    said,
    `Git refuses to write to ${repository}: it belongs to another user. If you trust them: git config --global --add safe.directory ${repository}`,
  );

/** How much of a history a clone has. */
export type Wholeness = 'whole' | 'shallow' | 'partial';

const INCOMPLETE: Readonly<Record<Wholeness, string>> = {
  whole: '',
  shallow: 'this clone is shallow, so earlier commits are missing. Fetch them: git fetch --unshallow --tags',
  partial: 'this clone is partial, so contents of earlier commits are missing. Fetch them: git fetch --refetch --no-filter',
};

/** The failure of a run that only looked, by what Git wrote in English. */
export function lookFailed(
  status: number | null,
  said: string,
  { top, whole }: { readonly top: string; readonly whole: Wholeness },
): GitFailed {
  const first = firstLine(said);
  if (/permission denied/iu.test(said)) return refused(`Git’s files in ${top}`, first);
  const lacking =
    /missing|bad object|unable to read|could not get|lazy|promisor|not a valid object|unable to find|Could not read/iu;
  if (whole !== 'whole' && lacking.test(said))
    return new GitFailed('missing', said, `The history of this store is not all here: ${INCOMPLETE[whole]}`);
  if (status === 1 && first === '') return new GitFailed('said no', said, `Git found nothing in ${top}.`);
  return damaged(top, first === '' ? `Git ended with status ${status ?? 'unknown'}` : first);
}

/** `fatal: bad object HEAD` → `bad object HEAD`. */
export const firstLine = (said: string): string =>
  (said.trim().split('\n')[0] ?? '').replace(/^(?:fatal|error|warning): /u, '').trim();
