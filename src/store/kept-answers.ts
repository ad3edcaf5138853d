import { createHash } from 'node:crypto';
import { stat } from 'node:fs/promises';
import path from 'node:path';
import { getOwn } from '../get-own.js';
import { headOf, type Repository, repositoryOf, textOf } from './git/repository.js';
import { CacheDir, sealed, unsealed } from './kept.js';
import { looksOfFiles, statSnapshot } from './looks.js';

/** Answers that were computed once: each part is read only when it is wanted. */
export interface KeptAnswers {
  readonly head: unknown;
  part(name: string): unknown;
}

/** Where an answer is kept, and what it must be of. */
export interface KeptAt {
  readonly room: CacheDir;
  readonly name: string;
  readonly stamp: string;
  /** Every file has been left alone for a while. */
  readonly settled: boolean;
}

/** What is asked, and what its answer depends on beside the store's files. */
export interface Asked {
  /** The room of answers of this kind. */
  readonly room: string;
  /** The question itself: answers to others are kept beside it. */
  readonly question: string;
  /** Files of this program that are written anew with every build. */
  readonly program: readonly string[];
  /** Files and folders of the repository's own that the answer depends on, within its folder. */
  readonly inGit: readonly string[];
  /** Whether it depends on the last commit: which files differ from it. */
  readonly standing?: boolean;
}

/** Answers of one kind; of one shell of five thousand records one takes about a megabyte. */
const MOST_KEPT = 40;

/** What is larger is computed again. */
const LARGEST_CHARS = 16 * 1024 * 1024;

/** The coarsest clock of a file system in use, FAT's, twice over. */
const SETTLED_MS = 4000;

/**
 * Answers hold while every file of the store, the log of commits and the program look as they did; see {@link statSnapshot} for what
 * that trusts. Nothing is kept while a file is so young that it could be changed again within one tick of a coarse clock. Undefined
 * outside Git and where Git logs no commits.
 */
export async function keptAt(root: string, asked: Asked, now = Date.now()): Promise<KeptAt | undefined> {
  try {
    const repository = repositoryOf(root);
    if (!repository) return undefined;
    const { gitDir, commonDir } = repository;
    const commits = path.join(gitDir, 'logs', 'HEAD');
    await stat(commits);
    const past = asked.standing ? PAST.map((file) => path.join(commonDir, file)) : [];
    const files = [...asked.program, commits, ...past, ...asked.inGit.map((file) => path.join(gitDir, file))];
    const standing = asked.standing ? headText(repository) : '';
    const looks = [looksOfFiles(files), statSnapshot(root)];
    return {
      room: CacheDir.in(gitDir, asked.room),
      name: `${digest([path.resolve(root), asked.question]).slice(0, 16)}.json`,
      stamp: digest([process.version, standing, ...looks.flatMap(({ lines }) => lines)]),
      settled: Math.max(...looks.map(({ youngestMs }) => youngestMs)) < now - SETTLED_MS,
    };
  } catch {
    return undefined;
  }
}

/** The commit that the work tree is of; beside it the files themselves say what differs. */
function headText(repository: Repository): string {
  const head = headOf(repository);
  return 'commit' in head ? head.commit : `${head.ref} ${textOf(path.join(repository.commonDir, head.ref)) ?? ''}`;
}

const digest = (lines: readonly string[]): string => createHash('sha256').update(lines.join('\n')).digest('hex');

/** What may give one commit another past, a clone made shallow or whole again; and the references that are packed. */
const PAST = ['shallow', 'packed-refs', 'reftable'];

/** The first line of a kept file. */
interface FirstLine {
  readonly stamp: string;
  readonly head: unknown;
  /** Where each part begins and ends, in bytes after this line. */
  readonly parts: Readonly<Record<string, readonly [from: number, to: number]>>;
}

/** Undefined where none are kept, where they are of something older, and where they are damaged. */
export async function readKept({ room, name, stamp }: KeptAt): Promise<KeptAnswers | undefined> {
  const bytes = await room.read(name);
  const text = bytes && unsealed(bytes);
  if (!text) return undefined;
  try {
    const end = text.indexOf(10);
    const first = JSON.parse(text.toString('utf8', 0, end)) as FirstLine;
    if (first.stamp !== stamp) return undefined;
    return {
      head: first.head,
      part(of) {
        const at = getOwn(first.parts, of);
        return at && JSON.parse(text.toString('utf8', end + 1 + at[0], end + 1 + at[1]));
      },
    };
  } catch {
    return undefined;
  }
}

/** One line that says of what they are and where each part begins and ends, in bytes after it; then the parts. */
export async function keep(
  { room, name, stamp, settled }: KeptAt,
  head: unknown,
  parts: Iterable<readonly [string, unknown]> = [],
): Promise<void> {
  if (!settled) return;
  const places: Record<string, readonly [number, number]> = {};
  const texts: string[] = [];
  let at = 0;
  for (const [of, value] of parts) {
    const text = JSON.stringify(value);
    const to = at + Buffer.byteLength(text);
    places[of] = [at, to];
    texts.push(text);
    at = to;
  }
  const first: FirstLine = { stamp, head, parts: places };
  const text = `${JSON.stringify(first)}\n${texts.join('')}`;
  if (text.length > LARGEST_CHARS) return;
  await room.write(name, sealed(text));
  await room.thin(MOST_KEPT);
}
