import { mkdir, readdir, readFile, stat, unlink } from 'node:fs/promises';
import path from 'node:path';
import { replaceFile } from './replace.js';

/** Answers that were computed once, by a key that changes with everything they depend on. Kept beside Git’s own files. */
export class Kept<T> {
  constructor(
    private readonly folder: string | undefined,
    private readonly isWhole: (found: unknown) => found is T,
  ) {}

  static in<T>(gitDir: string | undefined, what: string, isWhole: (found: unknown) => found is T): Kept<T> {
    return new Kept(gitDir === undefined ? undefined : path.join(gitDir, 'shellbook', what), isWhole);
  }

  /** Undefined where nothing of that key is kept, or it cannot be read. */
  async get(key: string): Promise<T | undefined> {
    if (this.folder === undefined) return undefined;
    try {
      const found: unknown = JSON.parse(await readFile(path.join(this.folder, `${key}.json`), 'utf8'));
      return this.isWhole(found) ? found : undefined;
    } catch {
      return undefined;
    }
  }

  /** A repository that cannot be written to keeps nothing: the answer is the same, only later. */
  async put(key: string, value: T): Promise<void> {
    if (this.folder === undefined) return;
    try {
      await mkdir(this.folder, { recursive: true });
      await replaceFile(path.join(this.folder, `${key}.json`), Buffer.from(JSON.stringify(value)), { sync: false });
    } catch {
      // Computed again next time.
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
