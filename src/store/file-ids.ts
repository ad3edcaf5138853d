import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { readdir, realpath } from 'node:fs/promises';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { askGit, runGit } from './git.js';
import { isTaken, takenAs } from './taken.js';

/** What every file of a store holds, without reading what Git has read already. */
export interface FileIds {
  /** Path relative to the store → Git’s id of its contents where Git has them, else a hash of them as they lie there. */
  readonly ids: ReadonlyMap<string, string>;
  /** Files that differ from the last commit, in order; undefined outside Git. */
  readonly uncommitted?: readonly string[];
  /** The repository’s own folder; undefined outside Git. */
  readonly gitDir?: string;
}

/** Record files and pictures of a store by contents. A file is read only where Git cannot vouch for it. */
export async function fileIds(root: string): Promise<FileIds> {
  const committed = await committedIds(root);
  const ids = new Map(committed?.ids);
  const unsure = committed ? committed.uncommitted : await everyFile(root);
  for (const file of unsure) {
    if (takenAs(file) === undefined) continue;
    const hash = await hashOf(root, file);
    if (hash === undefined) ids.delete(file);
    else ids.set(file, hash);
  }
  if (!committed) return { ids };
  return { ids, uncommitted: committed.uncommitted.filter((file) => takenAs(file) !== undefined), gitDir: committed.gitDir };
}

interface Committed {
  readonly ids: ReadonlyMap<string, string>;
  /** Also what Git was told not to look at, or to ignore. */
  readonly uncommitted: readonly string[];
  readonly gitDir: string;
}

async function committedIds(root: string): Promise<Committed | undefined> {
  try {
    const [gitDir = '', prefix = ''] = (await askGit(root, ['rev-parse', '--absolute-git-dir', '--show-prefix'])).split('\n');
    const [tree, status, kept] = await Promise.all([
      text(root, ['ls-tree', '-r', '-z', '--full-tree', `HEAD:${prefix}`]),
      text(root, ['status', '--porcelain=v1', '-z', '--no-renames', '--untracked-files=all', '--ignored=traditional', '--', '.']),
      text(root, ['ls-files', '-v', '-z', '--', '.']),
    ]);
    const ids = new Map<string, string>();
    for (const line of tree.split('\0')) {
      const [, mode, id, file = ''] = /^(\d+) blob ([0-9a-f]+)\t(.*)$/su.exec(line) ?? [];
      // A link’s contents lie elsewhere.
      if (id !== undefined && mode !== '120000' && takenAs(file) !== undefined) ids.set(file, id);
    }
    const links = tree.split('\0').flatMap((line) => /^120000 blob [0-9a-f]+\t(.*)$/su.exec(line)?.[1] ?? []);
    const inStore = (file: string): string => (file.startsWith(prefix) ? file.slice(prefix.length) : file);
    const changed = status.split('\0').flatMap((line) => (line.length > 3 ? [inStore(line.slice(3))] : []));
    // Marked "assume unchanged" or "skip": Git does not look, so we do.
    const hidden = kept.split('\0').flatMap((line) => (/^[a-zS] /u.test(line) ? [line.slice(2)] : []));
    const unsure = [...changed, ...hidden, ...links].flatMap((file) => (file.endsWith('/') ? [] : [file]));
    const folders = changed.filter((file) => file.endsWith('/'));
    for (const folder of folders) unsure.push(...(await filesIn(root, folder.replace(/\/$/u, ''))));
    return { ids, uncommitted: [...new Set(unsure)].sort(), gitDir };
  } catch {
    return undefined;
  }
}

const text = async (root: string, args: readonly string[]): Promise<string> => (await runGit(root, args)).toString('utf8');

async function everyFile(root: string): Promise<readonly string[]> {
  const top = await readdir(root, { withFileTypes: true });
  const files = top.flatMap((entry) => (entry.isDirectory() ? [] : [entry.name]));
  for (const entry of top) if (entry.isDirectory() && isTaken(entry.name)) files.push(...(await filesIn(root, entry.name)));
  return files;
}

async function filesIn(root: string, folder: string): Promise<readonly string[]> {
  const entries = await readdir(path.join(root, folder), { recursive: true, withFileTypes: true }).catch(() => []);
  return entries.flatMap((entry) =>
    entry.isDirectory()
      ? []
      : [
          path
            .relative(root, path.join(entry.parentPath ?? entry.path, entry.name))
            .split(path.sep)
            .join('/'),
        ],
  );
}

/** Undefined where it is not there, or leads out of the store. */
async function hashOf(root: string, file: string): Promise<string | undefined> {
  try {
    const [top, real] = await Promise.all([realpath(root), realpath(path.join(root, file))]);
    if (!real.startsWith(top + path.sep)) return 'outside';
    const hash = createHash('sha256');
    await pipeline(createReadStream(real), hash);
    return `w${hash.digest('hex')}`;
  } catch {
    return undefined;
  }
}
