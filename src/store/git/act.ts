import { spawn } from 'node:child_process';
import { firstLine, GitFailed, notInstalled, ofAnotherUser } from './failed.js';
import { safePath } from './look.js';
import { NOT_PASSED } from './not-passed.js';
import { type Repository, repositoryOf } from './repository.js';

export interface GitAct {
  /** False where the command takes paths as they are anyway, and refuses to be told. */
  readonly literal?: boolean;
  readonly input?: string;
  /** Added to the environment, as an author's name and date. */
  readonly env?: Readonly<Record<string, string>>;
}

/**
 * Who commits, how it is signed and what the shop's hooks say is the user's business; what would change the record on its way, or start
 * something beside the commit, is not.
 */
const FIXED = [
  'core.fsmonitor=false',
  'i18n.commitEncoding=UTF-8',
  'i18n.logOutputEncoding=UTF-8',
  'commit.cleanup=whitespace',
  'commit.status=false',
  'color.ui=false',
  'advice.addIgnoredFile=false',
  'safe.bareRepository=explicit',
  'submodule.recurse=false',
  'gc.auto=0',
].flatMap((one) => ['-c', one]);

/**
 * Runs Git as the user would, for what they asked to have written: a commit, a tag. Paths are from the work tree's top. Throws
 * {@link GitFailed}, with what Git or a hook of the shop's said in `said`.
 */
export function actGit(
  repository: Repository,
  args: readonly string[],
  { input, env: more, literal = true }: GitAct = {},
): Promise<string> {
  const env: NodeJS.ProcessEnv = {
    ...process.env,
    PATH: safePath(process.env.PATH),
    LC_ALL: 'C',
    GIT_TERMINAL_PROMPT: '0',
    ...more,
  };
  for (const name of NOT_PASSED) delete env[name];
  return new Promise((resolve, reject) => {
    const child = spawn('git', ['--no-pager', ...(literal ? ['--literal-pathspecs'] : []), ...FIXED, ...args], {
      cwd: repository.top,
      env,
      stdio: ['pipe', 'pipe', 'pipe'],
    });
    let out = '';
    let said = '';
    child.stdout.on('data', (bytes: Buffer) => {
      out += bytes.toString('utf8');
    });
    child.stderr.on('data', (bytes: Buffer) => {
      said += bytes.toString('utf8');
    });
    child.stdin.on('error', () => {});
    child.on('error', () => reject(notInstalled()));
    child.on('close', (status) => {
      if (status === 0) resolve(out.replace(/\n$/u, ''));
      else if (/dubious ownership|unsafe repository/u.test(said)) reject(ofAnotherUser(repository.top, said));
      else reject(new GitFailed('said no', said.trim(), firstLine(said)));
    });
    child.stdin.end(input);
  });
}

/** A setting of the user's; undefined where it is not set. */
export const userSetting = (root: string, key: string): Promise<string | undefined> => {
  const repository = repositoryOf(root);
  if (!repository) return Promise.resolve(undefined);
  return actGit(repository, ['config', '--get', key]).catch((error: unknown) => {
    if (error instanceof GitFailed && error.trouble === 'said no') return undefined;
    throw error;
  });
};
