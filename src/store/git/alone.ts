import { spawn } from 'node:child_process';
import { firstLine, notInstalled } from './failed.js';
import { safePath } from './look.js';

/** Nothing of anybody’s settings, no hooks, no templates: what is unpacked may be a stranger’s. */
const ALONE = [
  ...[
    'core.hooksPath=/dev/null',
    'core.fsmonitor=false',
    'core.autocrlf=false',
    'protocol.allow=never',
    'protocol.file.allow=always',
  ],
  ...['fetch.fsckObjects=true', 'transfer.fsckObjects=true', 'gc.auto=0', 'maintenance.auto=false', 'submodule.recurse=false'],
].flatMap((one) => ['-c', one]);

export interface AloneAnswer {
  readonly status: number;
  readonly out: string;
  /** The first line of what it complained about. */
  readonly said: string;
}

/** Runs Git in a folder of ours, with the settings of nobody. Throws {@link GitFailed} where there is no Git. */
export function gitAlone(folder: string, args: readonly string[]): Promise<AloneAnswer> {
  const env = {
    PATH: safePath(process.env.PATH),
    LC_ALL: 'C',
    GIT_CONFIG_NOSYSTEM: '1',
    GIT_CONFIG_GLOBAL: '/dev/null',
    GIT_TERMINAL_PROMPT: '0',
  };
  return new Promise((resolve, reject) => {
    const child = spawn('git', ['--no-pager', ...ALONE, ...args], { cwd: folder, env, stdio: ['ignore', 'pipe', 'pipe'] });
    let [out, said] = ['', ''];
    child.stdout.on('data', (bytes: Buffer) => {
      out += bytes.toString('utf8');
    });
    child.stderr.on('data', (bytes: Buffer) => {
      said += bytes.toString('utf8');
    });
    child.on('error', () => reject(notInstalled()));
    child.on('close', (status) => resolve({ status: status ?? 255, out: out.trim(), said: firstLine(said) }));
  });
}
