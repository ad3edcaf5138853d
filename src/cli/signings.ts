import type { Signings } from '../rules/rule.js';
import { gitText, inTop } from '../store/git/look.js';
import { isUnborn, repositoryOf } from '../store/git/repository.js';

const COMMIT = '\u001e';
const DIGEST = /\bc\d+-[0-9a-f]{64}\b/u;

/**
 * Under which identity each sign-off of a shell came into the history, by its digest, and since when anybody in the library may sign. Empty
 * where the store is not in Git.
 */
export async function signingsOf(root: string, shell: string): Promise<Signings> {
  const repository = repositoryOf(root);
  if (!repository || isUnborn(repository)) return { entries: new Map() };
  const [added, people] = await Promise.all([
    addedLines(root, [`shells/${shell}`], 'c[0-9]+-[0-9a-f]{64}'),
    addedLines(root, ['library'], '^ *-?.*signs:'),
  ]);
  const entries = new Map<string, { commit: string; date: string; email: string }>();
  for (const { line, ...commit } of added) {
    const digest = DIGEST.exec(line)?.[0];
    if (digest !== undefined && !entries.has(digest)) entries.set(digest, commit);
  }
  const since = people.find(({ line }) => /\bsigns\s*:/u.test(line))?.date;
  return { entries, ...(since === undefined ? {} : { since }) };
}

interface Added {
  readonly commit: string;
  readonly date: string;
  readonly email: string;
  readonly line: string;
}

/** Lines added to files of a folder by commits whose patch has such a line, oldest first. */
async function addedLines(root: string, folders: readonly string[], pattern: string): Promise<readonly Added[]> {
  const told = await gitText(root, [
    'log',
    '--reverse',
    '--extended-regexp',
    `-G${pattern}`,
    `--format=${COMMIT}%H %aI %ae`,
    '--patch',
    '--text',
    '--unified=0',
    '--no-renames',
    '--no-color',
    '--no-ext-diff',
    '--no-textconv',
    'HEAD',
    '--',
    ...inTop(root, folders),
  ]);
  return told.split(COMMIT).flatMap((part) => {
    const [head = '', ...lines] = part.split('\n');
    const [commit = '', date = '', email = ''] = head.split(' ');
    return lines.filter((line) => line.startsWith('+')).map((line) => ({ commit, date, email, line }));
  });
}
