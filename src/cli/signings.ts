import type { Person } from '../records/index.js';
import type { SigningEntry, Signings } from '../rules/rule.js';
import { readPersonKey } from '../signing/person-key.js';
import { patchLog } from '../store/git/patch-log.js';
import { isUnborn, repositoryOf } from '../store/git/repository.js';
import type { AllowedSigner } from './allowed-signers.js';
import { beyondStore } from './beyond-store.js';
import { commitSignatures } from './commit-signatures.js';

const COMMIT = '\u001e';
const DIGEST = /\bc\d+-[0-9a-f]{64}\b/u;

/** The keys of people whose records have one that can be read. */
export const keysOfPeople = (people: Iterable<Person>): readonly AllowedSigner[] =>
  [...people].flatMap(({ id, key }) => {
    const read = key === undefined ? undefined : readPersonKey(key);
    return read === undefined ? [] : [{ name: id, key: read }];
  });

/**
 * Under which identity each sign-off of a shell came into the history, by its digest, and since when anybody in the library may sign; where
 * people have keys, with what Git says of each commit's signature. Empty where the store is not in Git.
 */
export async function signingsOf(root: string, shell: string, people: Iterable<Person>): Promise<Signings> {
  const repository = repositoryOf(root);
  if (!repository || isUnborn(repository)) return { entries: new Map() };
  const [added, named, outside] = await Promise.all([
    addedLines(root, [`shells/${shell}`], 'c[0-9]+-[0-9a-f]{64}'),
    addedLines(root, ['library'], '^ *-?.*signs:'),
    beyondStore(root, shell, repository),
  ]);
  const entries = new Map<string, SigningEntry>();
  for (const { line, ...commit } of added) {
    const digest = DIGEST.exec(line)?.[0];
    if (digest !== undefined && !entries.has(digest)) entries.set(digest, commit);
  }
  // A commit that reaches beyond the store is of the project around it, and nobody's signature.
  for (const [digest, { commit }] of entries) if (outside.has(commit)) entries.delete(digest);
  const since = named.find(({ line }) => /\bsigns\s*:/u.test(line))?.date;
  const bound = { entries, ...(since === undefined ? {} : { since }) };
  const keys = keysOfPeople(people);
  return keys.length === 0 || entries.size === 0 ? bound : { ...bound, ...(await withSignatures(root, entries, keys)) };
}

async function withSignatures(
  root: string,
  entries: ReadonlyMap<string, SigningEntry>,
  keys: readonly AllowedSigner[],
): Promise<Pick<Signings, 'entries' | 'keysSince'>> {
  const commits = [...new Set([...entries.values()].map(({ commit }) => commit))];
  const [signatures, typed] = await Promise.all([
    commitSignatures(root, commits, keys),
    addedLines(root, ['library'], '(ssh-|ecdsa-sha2-)'),
  ]);
  const body = ({ key }: AllowedSigner): string => key.split(' ')[1] as string;
  const keysSince = keys.flatMap((one): readonly [string, string][] => {
    const date = typed.find(({ line }) => line.includes(body(one)))?.date;
    return date === undefined ? [] : [[one.name, date]];
  });
  const signed = [...entries].map(([digest, entry]): readonly [string, SigningEntry] => {
    const signature = signatures.get(entry.commit);
    return [digest, signature ? { ...entry, signature } : entry];
  });
  return { entries: new Map(signed), keysSince: new Map(keysSince) };
}

interface Added {
  readonly commit: string;
  readonly date: string;
  readonly email: string;
  readonly line: string;
}

/** Lines added to files of a folder by commits whose patch has such a line, oldest first. */
async function addedLines(root: string, folders: readonly string[], pattern: string): Promise<readonly Added[]> {
  const told = await patchLog(root, `${COMMIT}%H %aI %ae`, folders, ['--extended-regexp', `-G${pattern}`]);
  return told.split(COMMIT).flatMap((part) => {
    const [head = '', ...lines] = part.split('\n');
    const [commit = '', date = '', email = ''] = head.split(' ');
    return lines.filter((line) => line.startsWith('+')).map((line) => ({ commit, date, email, line }));
  });
}
