import { spawn } from 'node:child_process';

/** Git said no. */
export class GitFailed extends Error {
  override readonly name = 'GitFailed';
  constructor(
    readonly status: number | null,
    /** What Git wrote to standard error. */
    readonly said: string,
  ) {
    super(said.split('\n')[0] ?? '');
  }
}

export interface GitRun {
  readonly input?: string | Uint8Array;
  /** Added to the environment, as an author's name and date. */
  readonly env?: Readonly<Record<string, string>>;
  /** The repository's own settings may start other programs (hooks, signing): only where the user asked for a commit or a tag. */
  readonly trusted?: boolean;
  /** Takes what Git writes, piece by piece; then the answer is empty. What it throws ends the run. */
  readonly take?: (piece: Buffer) => void;
}

/** Git reads a repository's own settings: none of them may start another program while we only look. */
const LOOK_ONLY = ['core.fsmonitor=false', 'core.hooksPath=/dev/null', 'log.showSignature=false', 'gc.auto=0'].flatMap((one) => [
  '-c',
  one,
]);

/** A hook's own repository must not stand in for the one that lies around the folder. */
export const NOT_PASSED = ['GIT_DIR', 'GIT_WORK_TREE', 'GIT_INDEX_FILE', 'GIT_PREFIX', 'GIT_OBJECT_DIRECTORY', 'GIT_NAMESPACE'];

/**
 * Runs Git in a folder and gives what it wrote. The folder is Git's working folder, never one of its arguments; a caller puts names
 * behind `--`, so that none is read as an option. Throws {@link GitFailed}; also where Git is not installed (status null).
 */
export function runGit(dir: string, args: readonly string[], run: GitRun = {}): Promise<Buffer> {
  const env: NodeJS.ProcessEnv = { ...process.env, LC_ALL: 'C', GIT_TERMINAL_PROMPT: '0', ...run.env };
  for (const name of NOT_PASSED) delete env[name];
  if (!run.trusted) env.GIT_OPTIONAL_LOCKS = '0';
  return new Promise((resolve, reject) => {
    const child = spawn('git', ['--no-pager', '--literal-pathspecs', ...(run.trusted ? [] : LOOK_ONLY), ...args], {
      cwd: dir,
      env,
      stdio: ['pipe', 'pipe', 'pipe'],
    });
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    child.stdout.on('data', (bytes: Buffer) => {
      try {
        if (run.take) run.take(bytes);
        else out.push(bytes);
      } catch (error) {
        child.kill();
        reject(error);
      }
    });
    child.stderr.on('data', (bytes: Buffer) => err.push(bytes));
    // Git may end before it has read everything; its status says why.
    child.stdin.on('error', () => {});
    child.on('error', (error) => reject(new GitFailed(null, error.message)));
    child.on('close', (status) => {
      if (status === 0) resolve(Buffer.concat(out));
      else reject(new GitFailed(status, Buffer.concat(err).toString('utf8').trim()));
    });
    child.stdin.end(run.input);
  });
}

/** What Git answered, as text without the last line's end. */
export const askGit = async (dir: string, args: readonly string[], run: GitRun = {}): Promise<string> =>
  (await runGit(dir, args, run)).toString('utf8').replace(/\n$/u, '');
