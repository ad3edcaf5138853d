import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { blobId, readBlobs } from './git/blobs.js';
import { headOf, isUnborn, type Repository } from './git/repository.js';
import { listTree, type TreeFile } from './git/tree.js';
import { takenAs } from './taken.js';
import { type WorkFile, workFiles } from './work-files.js';

/** How the record files and pictures of a store stand beside a commit. */
export interface Beside {
  /** Path from the store → Git's name for the contents as they lie there. */
  readonly ids: ReadonlyMap<string, string>;
  /** Files that differ from the commit: changed, new, gone. In order. */
  readonly different: readonly string[];
}

export interface BesideAsked {
  /** Library and shop, and of the shells only this one. */
  readonly shell?: string;
  /** Every file is read, whatever was kept of an earlier time. */
  readonly careful?: boolean;
}

/**
 * Holds the store's files against a commit, by their contents alone: what Git is told to ignore, to skip or to take for unchanged is
 * looked at like the rest. Line ends of record files do not count, since Git may be set to change them; a picture that the commit holds
 * as a large-file pointer (its SHA-256) is held against that. Throws {@link GitFailed} where the commit cannot be read.
 */
export async function beside(
  repository: Repository,
  root: string,
  commit: string | null,
  { shell, careful = false }: BesideAsked = {},
): Promise<Beside> {
  const { objects, gitDir } = repository;
  const [work, committed] = await Promise.all([
    workFiles(root, { objects, ...(careful ? {} : { gitDir }), ...(shell === undefined ? {} : { shell }) }),
    commit === null ? [] : listTree(root, commit),
  ]);
  const wanted = (file: string): boolean => takenAs(file) !== undefined && (shell === undefined || isOfShell(file, shell));
  const tree = new Map(committed.filter((one) => wanted(one.path)).map((one) => [one.path, one]));
  const different = [...work]
    .filter(([file]) => wanted(file))
    .flatMap(([file, one]) => (isSame(one, tree.get(file), tree, objects) ? [] : [file]));
  const alike = await alikeInTheEnd(root, different, tree, objects);
  const gone = [...tree.keys()].filter((file) => !work.has(file));
  return {
    ids: new Map([...work].flatMap(([file, { id }]) => (id === undefined ? [] : [[file, id] as const]))),
    different: [...different.filter((file) => !alike.has(file)), ...gone].sort(),
  };
}

/** What a shell's record is made of. */
const isOfShell = (file: string, shell: string): boolean =>
  file === 'shop.yaml' || file.startsWith('library/') || file.startsWith(`shells/${shell}/`);

/** The commit that the work tree is of, as far as it is known without asking Git; null before the first. */
export const headName = (repository: Repository): string | null => {
  if (isUnborn(repository)) return null;
  const head = headOf(repository);
  return 'commit' in head ? head.commit : 'HEAD';
};

function isSame(
  { id, link }: WorkFile,
  then: TreeFile | undefined,
  tree: ReadonlyMap<string, TreeFile>,
  objects: Repository['objects'],
): boolean {
  if (!then || id === undefined || then.link !== (link !== undefined)) return false;
  if (!link) return then.blob === id;
  // Both the link and what it leads to.
  return then.blob === blobId(Buffer.from(link.text), objects) && link.target !== undefined && tree.get(link.target)?.blob === id;
}

/** A pointer of Git LFS (specification, version 1) is a short text. */
const POINTER_BYTES = 1024;

async function alikeInTheEnd(
  root: string,
  files: readonly string[],
  tree: ReadonlyMap<string, TreeFile>,
  objects: Repository['objects'],
): Promise<ReadonlySet<string>> {
  const asked = files.flatMap((file) => {
    const then = tree.get(file);
    if (!then || then.link) return [];
    return takenAs(file) === 'yaml' || then.bytes < POINTER_BYTES ? [{ file, blob: then.blob }] : [];
  });
  const alike = new Set<string>();
  const left: { readonly file: string; readonly blob: string }[] = [];
  for (const { file, blob } of asked) {
    if (takenAs(file) !== 'yaml') left.push({ file, blob });
    else {
      const now = await readFile(path.join(root, file)).catch(() => undefined);
      if (now && blobId(withoutReturns(now), objects) === blob) alike.add(file);
      else if (now) left.push({ file, blob });
    }
  }
  const blobs = await readBlobs(
    root,
    left.map(({ blob }) => blob),
  );
  for (const { file, blob } of left) {
    const then = blobs.get(blob) as Buffer;
    if (takenAs(file) === 'yaml' ? await sameText(root, file, then) : await isPointedAt(root, file, then)) alike.add(file);
  }
  return alike;
}

const withoutReturns = (bytes: Buffer): Buffer => Buffer.from(bytes.toString('latin1').replace(/\r\n/gu, '\n'), 'latin1');

async function sameText(root: string, file: string, then: Buffer): Promise<boolean> {
  const now = await readFile(path.join(root, file)).catch(() => undefined);
  return now !== undefined && withoutReturns(now).equals(withoutReturns(then));
}

async function isPointedAt(root: string, file: string, pointer: Buffer): Promise<boolean> {
  const named = /^version https:\/\/git-lfs\.github\.com\/spec\/v1\n(?:[a-z0-9.-]+ .*\n)*?oid sha256:([0-9a-f]{64})\n/u.exec(
    pointer.toString('latin1'),
  )?.[1];
  if (named === undefined) return false;
  const hash = createHash('sha256');
  await pipeline(createReadStream(path.join(root, file)), hash).catch(() => undefined);
  return hash.digest('hex') === named;
}
