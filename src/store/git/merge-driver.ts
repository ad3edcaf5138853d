import { actGit } from './act.js';
import { requireRepository } from './look.js';

/** As .gitattributes names it. */
const MERGE_DRIVER = 'shellbook';
/** The line of .gitattributes that names it. */
export const ATTRIBUTES = `*.yaml merge=${MERGE_DRIVER}\n`;

/**
 * Tells the repository around a store how files with `merge=shellbook` are merged: by this program. Git’s own settings of this copy
 * only: nobody gets them by cloning. Throws {@link GitFailed}.
 */
export async function installMergeDriver(root: string, node: string, program: string): Promise<string> {
  const repository = requireRepository(root);
  const line = `${quotedPath(node)} ${quotedPath(program)} merge --driver %O %A %B %P`;
  await actGit(repository, ['config', '--local', `merge.${MERGE_DRIVER}.name`, 'shellbook, by record and field'], {
    literal: false,
  });
  await actGit(repository, ['config', '--local', `merge.${MERGE_DRIVER}.driver`, line], { literal: false });
  return line;
}

/** For the command shell that Git starts it with; Git itself reads `%`. */
const quotedPath = (path: string): string => `'${path.replace(/\\/gu, '/').replace(/'/gu, `'\\''`).replace(/%/gu, '%%')}'`;
