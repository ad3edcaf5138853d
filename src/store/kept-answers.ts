import { stat } from 'node:fs/promises';
import path from 'node:path';
import { headOf, type Repository, repositoryOf, textOf } from './git/repository.js';
import { CacheDir } from './kept.js';
import { looksOfFiles, statSnapshot } from './looks.js';
import { digest } from './sealed.js';

/** Where an answer is kept, and what it must be of. */
export interface KeptAt {
  readonly room: CacheDir;
  readonly name: string;
  readonly stamp: string;
  /** Every file has been left alone for a while. */
  readonly settled: boolean;
  /** How many are kept beside it at most. */
  readonly most?: number;
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
  /** What else it depends on: the digest of a file that is asked about. */
  readonly more?: string;
}

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
      name: digest([path.resolve(root), asked.question].join('\n')).slice(0, 16),
      stamp: digest([process.version, standing, asked.more ?? '', ...looks.flatMap(({ lines }) => lines)].join('\n')),
      settled: Math.max(...looks.map(({ youngestMs }) => youngestMs)) < now - SETTLED_MS,
    };
  } catch {
    return undefined;
  }
}

/** What is found by the contents that it was computed of, and by the program; the entry itself says of which contents. */
export function keptByContents(gitDir: string, question: string, program: readonly string[]): KeptAt {
  return {
    room: CacheDir.in(gitDir, 'contents'),
    name: digest(question).slice(0, 16),
    stamp: digest([process.version, question, ...looksOfFiles(program).lines].join('\n')),
    settled: true,
  };
}

/** Figures of books beside each other: each takes a few megabytes of the user's own folder. */
const MOST_OF_FILES = 12;

/** Answers from a single file, as a printed book: they hold while its contents, which `stamp` is a digest of, and the program are the same. */
export function keptOfFile(stamp: string, { question, program }: Pick<Asked, 'question' | 'program'>, now = Date.now()): KeptAt {
  const look = looksOfFiles(program);
  return {
    room: CacheDir.ofUser('books'),
    name: digest([stamp, question].join('\n')).slice(0, 16),
    stamp: digest([process.version, stamp, ...look.lines].join('\n')),
    settled: look.youngestMs < now - SETTLED_MS,
    most: MOST_OF_FILES,
  };
}

/** The commit that the work tree is of; beside it the files themselves say what differs. */
function headText(repository: Repository): string {
  const head = headOf(repository);
  return 'commit' in head ? head.commit : `${head.ref} ${textOf(path.join(repository.commonDir, head.ref)) ?? ''}`;
}

/** What may give one commit another past, a clone made shallow or whole again; and the references that are packed. */
const PAST = ['shallow', 'packed-refs', 'reftable'];
