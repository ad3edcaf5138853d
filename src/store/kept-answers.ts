import { createHash } from 'node:crypto';
import { readdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { Room } from './kept.js';

/** Answers about one shell, that were computed once: each part is read only when it is wanted. */
export interface KeptAnswers {
  readonly head: unknown;
  part(name: string): unknown;
}

/** Where the answers of one shell are kept, and what they must be of. */
export interface KeptAt {
  readonly room: Room;
  readonly name: string;
  readonly stamp: string;
  /** Every file has been left alone for a while. */
  readonly settled: boolean;
}

/** Shells asked about of late; one of five thousand records is kept in about a megabyte. */
const MOST_KEPT = 40;

/** The coarsest clock of a file system in use, FAT's, twice over. */
const SETTLED_MS = 4000;

/**
 * Answers hold while every file of the store, the log of commits, the pages of printed books and the program look as they did. That
 * trusts what Git's own index trusts: a file of the same size, number and times, to the nanosecond, has the same contents. The time of
 * the last change of state is among them, which no program can set back; and nothing is kept while a file is so young that it could
 * be changed again within one tick of a coarse clock. Undefined outside Git and where Git logs no commits.
 * @param program A file of this program that is written anew with every build.
 */
export async function keptAt(root: string, shell: string, program: string, now = Date.now()): Promise<KeptAt | undefined> {
  try {
    const gitDir = await gitDirOf(root);
    if (gitDir === undefined) return undefined;
    const commits = path.join(gitDir, 'logs', 'HEAD');
    await stat(commits);
    const files = [program, commits, path.join(gitDir, 'shellbook', 'pages'), ...(await filesIn(root)).sort()];
    const all = await Promise.all(files.map(looks));
    const youngestMs = all.reduce((most, one) => Math.max(most, one?.changedMs ?? 0), 0);
    return {
      room: Room.in(gitDir, 'where'),
      name: `${digest([root, shell]).slice(0, 16)}.json`,
      stamp: digest(all.map((one, i) => `${files[i]} ${one?.text ?? '-'}`)),
      settled: youngestMs < now - SETTLED_MS,
    };
  } catch {
    return undefined;
  }
}

const digest = (lines: readonly string[]): string => createHash('sha256').update(lines.join('\n')).digest('hex');

/** Every file of the store, as it is read: what begins with a dot is none of it. */
async function filesIn(dir: string): Promise<string[]> {
  const entries = await readdir(dir, { withFileTypes: true });
  const some = entries
    .filter((entry) => !entry.name.startsWith('.'))
    .map(async (entry) => {
      const file = path.join(dir, entry.name);
      return entry.isDirectory() ? filesIn(file) : [file];
    });
  return (await Promise.all(some)).flat();
}

/** Undefined where there is no such file. */
async function looks(file: string): Promise<{ readonly text: string; readonly changedMs: number } | undefined> {
  try {
    const { size, mtimeNs, ctimeNs, ctimeMs, ino } = await stat(file, { bigint: true });
    return { text: `${size} ${mtimeNs} ${ctimeNs} ${ino}`, changedMs: Number(ctimeMs) };
  } catch {
    return undefined;
  }
}

/** The `.git` folder of the work tree that a store lies in; the one that a linked work tree's `.git` file names. */
async function gitDirOf(root: string): Promise<string | undefined> {
  for (let dir = path.resolve(root); ; dir = path.dirname(dir)) {
    const found = path.join(dir, '.git');
    const is = await stat(found).catch(() => undefined);
    if (is?.isDirectory()) return found;
    if (is?.isFile()) {
      const named = /^gitdir: (.+)$/mu.exec(await readFile(found, 'utf8'))?.[1];
      return named === undefined ? undefined : path.resolve(dir, named);
    }
    if (path.dirname(dir) === dir) return undefined;
  }
}

/** Undefined where none are kept, or where they are of something older. */
export async function readKept({ room, name, stamp }: KeptAt): Promise<KeptAnswers | undefined> {
  const bytes = await room.read(name);
  if (!bytes) return undefined;
  try {
    const end = bytes.indexOf(10);
    const first = JSON.parse(bytes.toString('utf8', 0, end)) as {
      readonly stamp: string;
      readonly head: unknown;
      readonly parts: Readonly<Record<string, readonly [from: number, to: number]>>;
    };
    if (first.stamp !== stamp) return undefined;
    return {
      head: first.head,
      part(of) {
        const at = Object.hasOwn(first.parts, of) ? first.parts[of] : undefined;
        return at && JSON.parse(bytes.toString('utf8', end + 1 + at[0], end + 1 + at[1]));
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
  parts: Iterable<readonly [string, unknown]>,
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
  await room.write(name, `${JSON.stringify({ stamp, head, parts: places })}\n${texts.join('')}`);
  await room.thin(MOST_KEPT);
}
