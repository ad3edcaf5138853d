import { existsSync } from 'node:fs';
import { readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { UserError } from '../user-error.js';
import type { Context } from './context.js';
import type { Status } from './io.js';
import { PACKAGE_FOLDER } from './package-folder.js';

/** The built program; Git starts it long after this process has ended. */
function builtProgram(): string | undefined {
  const file = fileURLToPath(new URL('dist/main.js', PACKAGE_FOLDER));
  return existsSync(file) ? file : undefined;
}

/** Ties the program to the repository around a store; false where there is nothing to tie. */
export async function installed(root: string): Promise<boolean> {
  const program = builtProgram();
  const [{ installMergeDriver }, { repositoryOf }] = await Promise.all([
    import('../store/git/merge-driver.js'),
    import('../store/git/repository.js'),
  ]);
  if (program === undefined || repositoryOf(root) === undefined) return false;
  await installMergeDriver(root, process.execPath, program);
  return true;
}

/**
 * What Git calls while it merges or rebases: base, ours (which gets the result) and theirs as files beside its own, and the path that they
 * are of. 0: merged. 1: a question is left, marked in the file. Else Git’s own merge by lines.
 */
export async function runDriver([base, ours, theirs, name]: readonly string[], context: Context): Promise<Status> {
  if (base === undefined || ours === undefined || theirs === undefined || name === undefined)
    throw new UserError(
      'Git calls this with four names: shellbook merge --driver BASE OURS THEIRS PATH. To settle what it left: shellbook merge',
    );
  const [{ mergeRecords }, { normalizeEol, restoreEol }, { replaceFile }] = await Promise.all([
    import('../entry/merge/merge.js'),
    import('../store/line-ends.js'),
    import('../store/replace.js'),
  ]);
  const texts = await Promise.all([base, ours, theirs].map((file) => textIn(path.resolve(context.io.cwd, file), file)));
  const [b, o, t] = texts.map((text) => (text === undefined ? undefined : normalizeEol(text)));
  const merged =
    b && o && t
      ? mergeRecords(name, { base: b.text, ours: o.text, theirs: t.text }, { ours: 'here', theirs: 'coming in' })
      : undefined;
  if (!merged || !o) return byLines(base, ours, theirs, context);
  await replaceFile(path.resolve(context.io.cwd, ours), Buffer.from(restoreEol(merged.text, o), 'utf8'));
  if (merged.clashes.length === 0) return 0;
  const { clashText } = await import('./report/merge-text.js');
  context.tell([...merged.clashes.map((one) => `${name}: ${clashText(one)}`), 'Settle it: shellbook merge'].join('\n'));
  return 1;
}

/** Undefined where it is none of the records that this program reads. */
async function textIn(file: string, shown: string): Promise<string | undefined> {
  const { decode, tooLarge } = await import('../store/taken.js');
  const found = await stat(file).catch(() => undefined);
  if (!found?.isFile()) throw new UserError(`${shown} is not a file, expected one of Git’s own, as it calls this`);
  if (tooLarge(found.size) !== undefined) return undefined;
  const read = decode(await readFile(file));
  return read.refused === undefined ? read.text : undefined;
}

/** As Git would without this program: it marks what it cannot merge. Away from the repository, so that no setting of it counts. */
async function byLines(base: string, ours: string, theirs: string, context: Context): Promise<Status> {
  const [{ gitAlone }, { tmpdir }] = await Promise.all([import('../store/git/alone.js'), import('node:os')]);
  const files = [ours, base, theirs].map((file) => path.resolve(context.io.cwd, file));
  const { status } = await gitAlone(tmpdir(), ['merge-file', '-L', 'here', '-L', 'before', '-L', 'coming in', '--', ...files]);
  if (status > 127) throw new UserError('Git could not merge the lines: nothing was changed.');
  return status === 0 ? 0 : 1;
}
