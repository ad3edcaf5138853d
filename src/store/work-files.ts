import { createHash } from 'node:crypto';
import {
  type BigIntStats,
  createReadStream,
  type Dirent,
  lstatSync,
  readdirSync,
  readlinkSync,
  realpathSync,
  statSync,
} from 'node:fs';
import path from 'node:path';
import { CacheDir } from './kept.js';
import { digest, sealed, unsealed } from './sealed.js';
import { DEEPEST_FOLDER, isTaken, takenAs } from './taken.js';

/** A record file or picture as it lies in the store. */
export interface WorkFile {
  /** Git's name for its contents; those that a link leads to. Undefined where they cannot be read, or lie outside the store. */
  readonly id: string | undefined;
  /** Where it is a link: what stands in it, and the file of the store that it leads to. */
  readonly link?: { readonly text: string; readonly target: string | undefined };
}

export interface WorkFilesAsked {
  /** Of the shells only this one. */
  readonly shell?: string;
  readonly objects: 'sha1' | 'sha256';
  /** Keeps what was worked out beside Git's files. Absent: every file is read. */
  readonly gitDir?: string;
}

/** Every file of the store that makes up a record, by its path from the store, read by ourselves: Git may be told not to look. */
export async function workFiles(root: string, asked: WorkFilesAsked): Promise<ReadonlyMap<string, WorkFile>> {
  const top = realpathSync(root);
  const kept = await KeptIds.open(top, asked);
  const files = new Map<string, WorkFile>();
  for (const { file, link } of entries(top, asked.shell)) {
    const where = link ? inside(top, path.join(top, file)) : file;
    const id = where === undefined ? undefined : await kept.idOf(where);
    files.set(file, { id, ...(link ? { link: { text: readlinkSync(path.join(top, file)), target: where } } : {}) });
  }
  await kept.save();
  return files;
}

/** A link's end, from the store; undefined where it leads out, or nowhere. */
function inside(top: string, file: string): string | undefined {
  try {
    const real = realpathSync(file);
    return real.startsWith(top + path.sep) ? path.relative(top, real).split(path.sep).join('/') : undefined;
  } catch {
    return undefined;
  }
}

function* entries(
  top: string,
  shell?: string,
  folder = '',
  depth = 0,
): Generator<{ readonly file: string; readonly link: boolean }> {
  for (const entry of listed(path.join(top, folder))) {
    const file = folder === '' ? entry.name : `${folder}/${entry.name}`;
    if (entry.name.startsWith('.')) continue;
    if (entry.isDirectory()) {
      const passed =
        (depth === 0 && !isTaken(entry.name)) || (folder === 'shells' && shell !== undefined && entry.name !== shell);
      if (!passed && depth < DEEPEST_FOLDER) yield* entries(top, shell, file, depth + 1);
    } else if ((entry.isFile() || entry.isSymbolicLink()) && takenAs(file) !== undefined)
      yield { file, link: entry.isSymbolicLink() };
  }
}

function listed(folder: string): readonly Dirent[] {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch {
    // The reader says why it cannot be read.
    return [];
  }
}

/** How a file looked, when it did, and its contents' name then. */
type KeptId = readonly [size: string, mtimeNs: string, ctimeNs: string, ino: string, atMs: number, id: string];

/** The coarsest clock of a file system in use, FAT's, twice over: a younger file may change again within one tick. */
const SETTLED_MS = 4000;

/** Names of contents that were worked out before hold while a file looks as it did; no program can set its last time back. */
class KeptIds {
  private readonly now = new Map<string, KeptId>();
  private changed = false;

  private constructor(
    private readonly top: string,
    private readonly objects: 'sha1' | 'sha256',
    private readonly room: CacheDir,
    private readonly name: string,
    private readonly before: Readonly<Record<string, KeptId>>,
  ) {}

  static async open(top: string, { shell, objects, gitDir }: WorkFilesAsked): Promise<KeptIds> {
    const room = CacheDir.in(gitDir, 'ids');
    const name = `${digest([top, objects, shell === undefined ? 'all' : `shell ${shell}`].join('\n')).slice(0, 16)}.json`;
    const bytes = room.read(name);
    const text = bytes && unsealed(bytes);
    return new KeptIds(top, objects, room, name, text ? parsed(text) : {});
  }

  async idOf(file: string): Promise<string | undefined> {
    const look = lookAt(path.join(this.top, file));
    if (!look?.isFile()) return undefined;
    const stamp = [look.size, look.mtimeNs, look.ctimeNs, look.ino].map(String);
    const was = Object.hasOwn(this.before, file) ? this.before[file] : undefined;
    if (was && stamp.every((one, i) => was[i] === one) && Number(look.ctimeNs / 1_000_000n) < was[4] - SETTLED_MS) {
      this.now.set(file, was);
      return was[5];
    }
    const atMs = Date.now();
    const id = await contentsId(path.join(this.top, file), Number(look.size), this.objects);
    if (id !== undefined) this.now.set(file, [...stamp, atMs, id] as unknown as KeptId);
    this.changed = true;
    return id;
  }

  async save(): Promise<void> {
    if (this.changed || this.now.size !== Object.keys(this.before).length)
      await this.room.write(this.name, sealed(JSON.stringify(Object.fromEntries(this.now))));
    if (this.changed) await this.room.thin(MOST_KEPT);
  }
}

const MOST_KEPT = 400;

/** Whoever can write there may have written anything. */
function parsed(text: Buffer): Readonly<Record<string, KeptId>> {
  try {
    const found = JSON.parse(text.toString('utf8')) as Record<string, KeptId>;
    const whole = Object.values(found).every((one) => Array.isArray(one) && one.length === 6 && typeof one[4] === 'number');
    return whole ? found : {};
  } catch {
    return {};
  }
}

function lookAt(file: string): BigIntStats | undefined {
  try {
    return statSync(file, { bigint: true, throwIfNoEntry: false });
  } catch {
    return undefined;
  }
}

/** Undefined where it cannot be read, or grows or shrinks meanwhile. */
async function contentsId(file: string, size: number, objects: 'sha1' | 'sha256'): Promise<string | undefined> {
  const hash = createHash(objects).update(`blob ${size}\0`);
  let left = size;
  try {
    if (!lstatSync(file).isFile()) return undefined;
    for await (const piece of createReadStream(file)) {
      hash.update(piece as Buffer);
      left -= (piece as Buffer).length;
    }
  } catch {
    return undefined;
  }
  return left === 0 ? hash.digest('hex') : undefined;
}
