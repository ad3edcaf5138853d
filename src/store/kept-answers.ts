import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rename, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';

/**
 * Answers that were computed once, kept beside Git's own files and never in the store: one line that says of what they are, then the
 * parts, each read only when it is wanted. They hold while no file of the store, and no commit, is newer.
 */
export interface Kept {
  readonly head: unknown;
  part(name: string): unknown;
}

/** Where the answers of one shell are kept, and what they must be of. */
export interface KeptAt {
  readonly file: string;
  readonly stamp: string;
}

/** Undefined outside Git. `program`: a file of this program that is written anew with every build. */
export async function keptAt(root: string, shell: string, program: string): Promise<KeptAt | undefined> {
  try {
    const gitDir = await gitDirOf(root);
    if (gitDir === undefined) return undefined;
    const hash = createHash('sha256');
    for (const file of [program, path.join(gitDir, 'logs', 'HEAD'), path.join(gitDir, 'shellbook', 'pages')]) {
      hash.update(`${await looks(file)}\n`);
    }
    const files = await filesIn(root);
    const all = await Promise.all([...files].sort().map(async (file) => `${file} ${await looks(file)}`));
    hash.update(all.join('\n'));
    const name = createHash('sha256').update(`${root}\n${shell}`).digest('hex').slice(0, 16);
    return { file: path.join(gitDir, 'shellbook', 'where', `${name}.json`), stamp: hash.digest('hex') };
  } catch {
    return undefined;
  }
}

/** Every file of the store, as it is read: what begins with a dot is none of it. */
async function filesIn(dir: string): Promise<readonly string[]> {
  const entries = await readdir(dir, { withFileTypes: true });
  const some = entries
    .filter((entry) => !entry.name.startsWith('.'))
    .map(async (entry) => {
      const file = path.join(dir, entry.name);
      return entry.isDirectory() ? filesIn(file) : [file];
    });
  return (await Promise.all(some)).flat();
}

/** Size and time of a file to the nanosecond, as Git itself tells a changed file; `-` where there is none. */
async function looks(file: string): Promise<string> {
  try {
    const { size, mtimeNs, ino } = await stat(file, { bigint: true });
    return `${size} ${mtimeNs} ${ino}`;
  } catch {
    return '-';
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
export async function readKept({ file, stamp }: KeptAt): Promise<Kept | undefined> {
  try {
    const bytes = await readFile(file);
    const end = bytes.indexOf(10);
    const first = JSON.parse(bytes.toString('utf8', 0, end)) as {
      readonly stamp: string;
      readonly head: unknown;
      readonly parts: Readonly<Record<string, readonly [from: number, to: number]>>;
    };
    if (first.stamp !== stamp) return undefined;
    return {
      head: first.head,
      part(name) {
        const at = Object.hasOwn(first.parts, name) ? first.parts[name] : undefined;
        return at && JSON.parse(bytes.toString('utf8', end + 1 + at[0], end + 1 + at[1]));
      },
    };
  } catch {
    return undefined;
  }
}

/** A repository that cannot be written to keeps nothing: the answer was given all the same. */
export async function keep({ file, stamp }: KeptAt, head: unknown, parts: Iterable<readonly [string, unknown]>): Promise<void> {
  try {
    const places: Record<string, readonly [number, number]> = {};
    const texts: string[] = [];
    let at = 0;
    for (const [name, value] of parts) {
      const text = JSON.stringify(value);
      const to = at + Buffer.byteLength(text);
      places[name] = [at, to];
      texts.push(text);
      at = to;
    }
    await mkdir(path.dirname(file), { recursive: true });
    const unfinished = `${file}.${process.pid}`;
    await writeFile(unfinished, `${JSON.stringify({ stamp, head, parts: places })}\n${texts.join('')}`);
    await rename(unfinished, file);
  } catch {
    // Only the next answer is slower.
  }
}
