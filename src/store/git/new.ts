import { type SimpleGit, simpleGit } from 'simple-git';
import { safePath } from './look.js';

/** Starts a repository in a folder, by the user's own settings. False where Git is not installed, or will not. */
export async function startRepository(dir: string): Promise<boolean> {
  try {
    await simpleGit({ baseDir: dir }).init();
    return true;
  } catch {
    return false;
  }
}

const ENVIRONMENT = [
  'PATH',
  ...['AUTHOR', 'COMMITTER'].flatMap((who) => [`GIT_${who}_NAME`, `GIT_${who}_EMAIL`, `GIT_${who}_DATE`]),
];

/** Nothing of the user's own, so that commits come out the same everywhere: no settings, no hooks, no signing. */
const ALONE = [
  'core.autocrlf=false',
  'core.hooksPath=/dev/null',
  'core.fsmonitor=false',
  'commit.gpgsign=false',
  'tag.gpgsign=false',
  'gc.auto=0',
];

/** A repository that is made of invented commits. */
export class MadeRepository {
  private constructor(private readonly git: SimpleGit) {}

  static async start(dir: string): Promise<MadeRepository> {
    const git = simpleGit({
      baseDir: dir,
      config: ALONE,
      // Who and when are told to Git through its environment, and nothing else is.
      allowEnvironment: ENVIRONMENT,
      unsafe: {
        allowUnsafeHooksPath: true,
        allowUnsafeFsMonitor: true,
        allowUnsafeTemplateDir: true,
        allowUnsafeGpgProgram: true,
      },
    });
    await git.raw(['init', '--quiet', '--initial-branch=main', '--template=']);
    await git.raw(['config', 'core.autocrlf', 'false']);
    return new MadeRepository(git);
  }

  /** Commits all that lies there; `as` says who and when, as Git's own variables. */
  async commitAll(as: Readonly<Record<string, string>>, message: string): Promise<void> {
    const asOne = this.git.env({ PATH: safePath(process.env.PATH), ...as });
    await asOne.raw(['add', '--all', '--', '.']);
    await asOne.raw(['commit', '--quiet', '--allow-empty', '--no-verify', '--no-gpg-sign', '--cleanup=verbatim', '-m', message]);
  }
}
