import { spawn } from 'node:child_process';
import { devNull } from 'node:os';
import path from 'node:path';
import { GitFailed, lookFailed, notInstalled } from './failed.js';
import { type Repository, repositoryOf } from './repository.js';
import { viewOf } from './view.js';

export interface GitRun {
  readonly input?: string | Uint8Array;
  /** Takes what Git writes, piece by piece; then the answer is empty. What it throws ends the run. */
  readonly take?: (piece: Buffer) => void;
}

/** The empty tree, whose attributes say nothing: Git 2.43 and later read them from a commit otherwise. */
const NO_ATTRIBUTES = {
  sha1: '4b825dc642cb6eb9a060e54bf8d69288fbee4904',
  sha256: '6ef19b41225c5369f1c104d45d8d85efa9b057b53b14b4b9b939dd74decc5321',
};

/** All that Git is told of its surroundings: nothing of the user's, the machine's or the repository's settings. */
function environment(repository: Repository): NodeJS.ProcessEnv {
  const view = viewOf(repository);
  return {
    PATH: safePath(process.env.PATH),
    ...(process.env.SystemRoot === undefined ? {} : { SystemRoot: process.env.SystemRoot }),
    LC_ALL: 'C',
    HOME: view.folder,
    XDG_CONFIG_HOME: view.folder,
    GIT_DIR: view.folder,
    GIT_OBJECT_DIRECTORY: view.objects,
    GIT_CONFIG_NOSYSTEM: '1',
    GIT_CONFIG_GLOBAL: devNull,
    GIT_ATTR_NOSYSTEM: '1',
    GIT_ATTR_SOURCE: NO_ATTRIBUTES[repository.objects],
    GIT_NO_REPLACE_OBJECTS: '1',
    GIT_NO_LAZY_FETCH: '1',
    GIT_OPTIONAL_LOCKS: '0',
    GIT_TERMINAL_PROMPT: '0',
    GIT_ALLOW_PROTOCOL: '',
  };
}

/** Whatever is looked up in the folder that one stands in may be somebody else's program. */
export const safePath = (given: string | undefined): string =>
  (given ?? '')
    .split(path.delimiter)
    .filter((folder) => path.isAbsolute(folder))
    .join(path.delimiter);

/** The repository of a store that has one. Throws {@link GitFailed} where it has none. */
export function requireRepository(root: string): Repository {
  const found = repositoryOf(root);
  if (found) return found;
  throw new GitFailed(
    'said no',
    '',
    `The store at ${root} does not lie in a Git work tree, so it has no history. Start one: git init`,
  );
}

/**
 * Asks Git about the repository of a store, by its objects and references alone; paths are from the work tree's top, see
 * {@link inTop}. Names stand behind `--` or `--end-of-options`, so that none is read as an option. Throws {@link GitFailed}.
 */
export function runGit(root: string, args: readonly string[], run: GitRun = {}): Promise<Buffer> {
  return lookInto(requireRepository(root), args, run);
}

function lookInto(repository: Repository, args: readonly string[], { input, take }: GitRun): Promise<Buffer> {
  const env = environment(repository);
  return new Promise((resolve, reject) => {
    const child = spawn('git', ['--no-pager', '--literal-pathspecs', '-c', 'protocol.allow=never', ...args], {
      cwd: env.GIT_DIR,
      env,
      stdio: ['pipe', 'pipe', 'pipe'],
    });
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    child.stdout.on('data', (bytes: Buffer) => {
      try {
        if (take) take(bytes);
        else out.push(bytes);
      } catch (error) {
        child.kill();
        reject(error);
      }
    });
    child.stderr.on('data', (bytes: Buffer) => err.push(bytes));
    // Git may end before it has read everything; its status says why.
    child.stdin.on('error', () => {});
    child.on('error', () => reject(notInstalled()));
    child.on('close', (status) => {
      if (status === 0) resolve(Buffer.concat(out));
      else reject(lookFailed(status, Buffer.concat(err).toString('utf8'), repository));
    });
    child.stdin.end(input);
  });
}

/** What Git answered, as text without the last line's end. */
export const askGit = async (root: string, args: readonly string[], run: GitRun = {}): Promise<string> =>
  (await gitText(root, args, run)).replace(/\n$/u, '');

export const gitText = async (root: string, args: readonly string[], run: GitRun = {}): Promise<string> =>
  (await runGit(root, args, run)).toString('utf8');

/** What Git answered; undefined where it answered no. Throws {@link GitFailed} where it could not answer. */
export const askQuietly = (root: string, args: readonly string[]): Promise<string | undefined> =>
  askGit(root, args).catch((error: unknown) => {
    if (error instanceof GitFailed && error.trouble === 'said no') return undefined;
    throw error;
  });

/** Paths of the store as Git has them, from the work tree's top. */
export function inTop(root: string, paths: readonly string[]): readonly string[] {
  const { prefix } = requireRepository(root);
  return paths.map((one) => (one === '.' ? prefix || '.' : `${prefix}${one}`));
}

/** `shells/T-1` in a commit, as Git names it; the store's own folder without a path. */
export const at = (root: string, commit: string, inside = ''): string => `${commit}:${requireRepository(root).prefix}${inside}`;
