import { builtIn, type FileVersions, readOnce, substanceChanges } from '../history/substance.js';
import type { Change, Changes } from '../model/changes.js';
import { readBlobs } from '../store/git/blobs.js';
import { gitText, inTop } from '../store/git/look.js';
import { isUnborn, repositoryOf } from '../store/git/repository.js';
import { beyondStore } from './beyond-store.js';
import { localDay } from './local-day.js';

/** What a shell's history says of changes. */
export interface ChangeHistory {
  readonly changes: Changes;
  /** Ids of records that were planned once and are planned no more. */
  readonly builtSincePlanned: ReadonlySet<string>;
  /** Commits left out, since they also changed files outside the store. */
  readonly sharedCommits?: number;
}

interface CommitFiles {
  readonly commit: string;
  readonly date: string;
  readonly files: readonly { readonly file: string; readonly before?: string; readonly after?: string }[];
}

const COMMIT = '\u001e';
/** Evidence and signatures: nothing that evidence is of. */
const EVIDENCE = /\/(?:photos|tests|weights|findings|signoffs|amendments)[^/]*\.yaml$/u;
const NO_BLOB = /^0+$/u;

/**
 * The last change of substance of every record of a shell, by its history, and by what is not committed. Its first commit is no change. A later one
 * counts from the date typed on the record if that changed too, else from the commit, or from today where it is not committed. A commit that
 * also changed files outside the store is none of the store's own history: it moves or mends records, and no coach changed by it.
 * Empty where the store is not in Git.
 */
export async function changesOf(
  root: string,
  shell: string,
  now: ReadonlyMap<string, string>,
  uncommitted: readonly string[],
): Promise<ChangeHistory> {
  const changes = new Map<string, Change>();
  const repository = repositoryOf(root);
  if (!repository || isUnborn(repository)) return { changes, builtSincePlanned: new Set() };
  const [commits, outside] = await Promise.all([commitsOf(root, shell), beyondStore(root, shell, repository)]);
  const texts = await readBlobs(
    root,
    commits.flatMap(({ files }) => files.flatMap(({ before, after }) => [before, after].filter((one) => one !== undefined))),
  );
  const textOf = (blob: string | undefined): string | undefined =>
    blob === undefined ? undefined : texts.get(blob)?.toString('utf8');
  const newest = new Map<string, string | undefined>();
  const built = new Set<string>();
  const read = readOnce();
  for (const { commit, date, files } of commits) {
    const versions = files.map(({ file, before, after }): FileVersions => version(file, textOf(before), textOf(after)));
    for (const id of builtIn(versions, read)) built.add(id);
    if (!outside.has(commit))
      for (const one of substanceChanges(versions, read)) changes.set(one.id, { day: one.date ?? date, commit });
    for (const { file, after } of files) newest.set(file, textOf(after));
  }
  const inHand = uncommitted
    .filter((file) => file.startsWith(`shells/${shell}/`) && file.endsWith('.yaml'))
    .map((file) => version(file, newest.get(file), now.get(file)));
  for (const id of builtIn(inHand, read)) built.add(id);
  for (const one of substanceChanges(inHand, read)) changes.set(one.id, { day: one.date ?? localDay(new Date()) });
  return { changes, builtSincePlanned: built, ...(outside.size > 0 ? { sharedCommits: outside.size } : {}) };
}

const version = (file: string, before: string | undefined, after: string | undefined): FileVersions => ({
  file,
  ...(before === undefined ? {} : { before }),
  ...(after === undefined ? {} : { after }),
});

/** Every commit of a shell's records, oldest first, with its YAML files by their blobs before and after. */
async function commitsOf(root: string, shell: string): Promise<readonly CommitFiles[]> {
  const folder = `shells/${shell}`;
  const [inGit = folder] = inTop(root, [folder]);
  const told = await gitText(root, [
    'log',
    '--reverse',
    '-z',
    '--raw',
    '--no-abbrev',
    '--no-renames',
    `--format=${COMMIT}%H %aI`,
    'HEAD',
    '--',
    inGit,
  ]);
  return told.split(COMMIT).flatMap((part): CommitFiles[] => {
    const [head = '', ...rest] = part.split('\0').filter((one) => one.trim() !== '');
    const [commit, date] = head.trim().split(' ');
    if (!commit || !date) return [];
    const files: { file: string; before?: string; after?: string }[] = [];
    for (let i = 0; i + 1 < rest.length; i += 2) {
      const [, , before = '', after = ''] = (rest[i] as string).trim().split(' ');
      const file = folder + (rest[i + 1] as string).slice(inGit.length);
      if (!file.endsWith('.yaml') || EVIDENCE.test(file)) continue;
      files.push({ file, ...(NO_BLOB.test(before) ? {} : { before }), ...(NO_BLOB.test(after) ? {} : { after }) });
    }
    return [{ commit, date, files }];
  });
}
