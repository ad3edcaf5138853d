import { readFileSync } from 'node:fs';
import { mkdir, readdir, stat, unlink } from 'node:fs/promises';
import path from 'node:path';
import { userCacheDir } from './cache-key.js';
import { replaceFile } from './replace.js';

/**
 * A folder of answers that were computed once, beside Git's own files and never among the records. Whatever lies there can be taken
 * away: then it is computed again. A repository that cannot be written to keeps nothing.
 */
export class CacheDir {
  private constructor(private readonly folder: string | undefined) {}

  /** Without a Git folder there is no room, and nothing is kept. */
  static in(gitDir: string | undefined, what: string): CacheDir {
    return new CacheDir(gitDir === undefined ? undefined : path.join(gitDir, 'shellbook', what));
  }

  /** In the user's own folder, for what belongs to no repository. */
  static ofUser(what: string, environment: NodeJS.ProcessEnv = process.env): CacheDir {
    return new CacheDir(path.join(userCacheDir(environment), what));
  }

  /** Undefined where nothing of that name is kept, or it cannot be read. */
  read(name: string): Buffer | undefined {
    if (this.folder === undefined) return undefined;
    try {
      // At once: nothing else can be done until it is there, and in pieces it takes several times as long.
      return readFileSync(path.join(this.folder, name));
    } catch {
      return undefined;
    }
  }

  /** False where it could not be written: then it is computed again next time. */
  async write(name: string, text: Buffer | undefined): Promise<boolean> {
    if (this.folder === undefined || text === undefined) return false;
    try {
      await mkdir(this.folder, { recursive: true });
      return await replaceFile(path.join(this.folder, name), text, { sync: false });
    } catch {
      return false;
    }
  }

  /** Takes the oldest away where more than `most` are kept. */
  async thin(most: number): Promise<void> {
    if (this.folder === undefined) return;
    const { folder } = this;
    const names = await readdir(folder).catch(() => []);
    if (names.length <= most) return;
    const dated = await Promise.all(
      names.map(async (name) => ({ name, at: (await stat(path.join(folder, name)).catch(() => undefined))?.mtimeMs ?? 0 })),
    );
    for (const { name } of dated.sort((a, b) => a.at - b.at).slice(0, names.length - most))
      await unlink(path.join(folder, name)).catch(() => {});
  }
}
