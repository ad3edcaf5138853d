import { gitText, inTop } from './look.js';

/**
 * Git's log of some folders as patches that hold no line but the changed ones, oldest commit first. No setting, filter or program of a
 * repository has a part in it.
 */
export const patchLog = (
  root: string,
  format: string,
  folders: readonly string[],
  more: readonly string[] = [],
): Promise<string> =>
  gitText(root, [
    'log',
    '--reverse',
    ...more,
    `--format=${format}`,
    ...['--patch', '--text', '--unified=0', '--no-renames', '--no-color', '--no-ext-diff', '--no-textconv'],
    'HEAD',
    '--',
    ...inTop(root, folders),
  ]);
