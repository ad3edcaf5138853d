import { readdirSync, readFileSync, realpathSync, type Stats, statSync } from 'node:fs';
import path from 'node:path';
import { damaged, refused, type Wholeness } from './failed.js';

/** The repository that a store lies in, found without Git: its settings have no say in it. */
export interface Repository {
  /** The work tree's top folder, absolute, behind no link. */
  readonly top: string;
  /** The work tree's own folder of Git's, and the one that all work trees share; often the same. */
  readonly gitDir: string;
  readonly commonDir: string;
  /** The store's folder relative to the top, with forward slashes and a closing one; empty at the top. */
  readonly prefix: string;
  /** How objects are named and references are kept (`git help repository-version`). */
  readonly objects: 'sha1' | 'sha256';
  readonly refs: 'files' | 'reftable';
  /** shallow: earlier commits were not fetched. partial: contents were not. */
  readonly whole: Wholeness;
}

/**
 * The repository around a folder: the nearest `.git` from it upwards. A folder that looks like a repository's inside without being
 * called `.git` is none, whoever put it there. Undefined where there is none. Throws {@link GitFailed} where it cannot be read.
 */
export function repositoryOf(root: string): Repository | undefined {
  let real: string;
  try {
    real = realpathSync(root);
  } catch {
    return undefined;
  }
  for (let top = real; ; top = path.dirname(top)) {
    const gitDir = gitDirIn(top);
    if (gitDir !== undefined) return read(top, gitDir, real);
    if (path.dirname(top) === top) return undefined;
  }
}

/** `.git` is the folder, or a file that names it (`gitdir: …`), as in a linked work tree. */
function gitDirIn(top: string): string | undefined {
  const dotGit = path.join(top, '.git');
  const found = lookAt(dotGit);
  if (found?.isDirectory()) return lookAt(path.join(dotGit, 'objects')) || lookAt(path.join(dotGit, 'HEAD')) ? dotGit : undefined;
  if (!found?.isFile()) return undefined;
  const named = /^gitdir: (.+?)\r?\n?$/u.exec(textOf(dotGit) ?? '')?.[1];
  const gitDir = named === undefined ? undefined : path.resolve(top, named);
  if (gitDir === undefined || !lookAt(gitDir)?.isDirectory())
    throw damaged(top, `its .git names the folder ${named ?? '(none)'}, which does not exist`);
  return gitDir;
}

function read(top: string, gitDir: string, root: string): Repository {
  const commonDir = path.resolve(gitDir, textOf(path.join(gitDir, 'commondir'))?.trim() ?? '.');
  const settings = textOf(path.join(commonDir, 'config')) ?? '';
  const inside = path.relative(top, root).split(path.sep).join('/');
  return {
    top,
    gitDir,
    commonDir,
    prefix: inside === '' ? '' : `${inside}/`,
    objects: /^\s*objectformat\s*=\s*"?sha256"?\s*$/imu.test(settings) ? 'sha256' : 'sha1',
    refs: /^\s*refstorage\s*=\s*"?reftable/imu.test(settings) ? 'reftable' : 'files',
    whole: wholeness(commonDir),
  };
}

function wholeness(commonDir: string): Repository['whole'] {
  if (lookAt(path.join(commonDir, 'shallow'))) return 'shallow';
  try {
    const packs = readdirSync(path.join(commonDir, 'objects', 'pack'));
    return packs.some((name) => name.endsWith('.promisor')) ? 'partial' : 'whole';
  } catch {
    return 'whole';
  }
}

/** What `HEAD` says: a branch (`refs/heads/main`) or a commit. Throws {@link GitFailed} where it says neither. */
export function headOf({ gitDir, top }: Repository): { readonly ref: string } | { readonly commit: string } {
  const text = textOf(path.join(gitDir, 'HEAD'));
  const ref = /^ref: (refs\/[^\s]+)\s*$/u.exec(text ?? '')?.[1];
  if (ref !== undefined && !ref.includes('..')) return { ref };
  const commit = /^([0-9a-f]{40}(?:[0-9a-f]{24})?)\s*$/u.exec(text ?? '')?.[1];
  if (commit !== undefined) return { commit };
  throw damaged(top, text === undefined ? 'the file HEAD is missing' : 'the file HEAD says neither a branch nor a commit');
}

/** Whether the branch that `HEAD` names has no commit yet, as right after `git init`. */
export function isUnborn(repository: Repository): boolean {
  const head = headOf(repository);
  if (!('ref' in head) || repository.refs !== 'files') return false;
  if (!lookAt(path.join(repository.commonDir, 'refs'))) throw damaged(repository.top, 'the folder refs is missing');
  if (lookAt(path.join(repository.commonDir, head.ref))) return false;
  return !(textOf(path.join(repository.commonDir, 'packed-refs')) ?? '')
    .split('\n')
    .some((line) => line.endsWith(` ${head.ref}`));
}

/** Undefined where nothing is there. A pipe or a device in the place of Git's files would hold whoever reads it. */
export function textOf(file: string): string | undefined {
  const found = lookAt(file);
  if (!found) return undefined;
  if (!found.isFile()) throw damaged(path.dirname(file), `${path.basename(file)} is not a file`);
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    throw asFailure(error, file);
  }
}

function lookAt(file: string): Stats | undefined {
  try {
    return statSync(file, { throwIfNoEntry: false });
  } catch (error) {
    if (['ENOTDIR', 'ELOOP'].includes((error as NodeJS.ErrnoException).code ?? '')) return undefined;
    throw asFailure(error, file);
  }
}

function asFailure(error: unknown, file: string): Error {
  const code = (error as NodeJS.ErrnoException).code ?? String(error);
  return code === 'EACCES' || code === 'EPERM' ? refused(file, code) : damaged(path.dirname(file), `${file}: ${code}`);
}
