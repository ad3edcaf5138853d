import { closingTags } from './closings.js';
import { askGit, at } from './git/look.js';
import { repositoryOf } from './git/repository.js';

/** How Git says that a shell was closed; undefined where it was not, or outside Git. */
export interface ClosedAs {
  readonly tag: string;
  /** A, B … */
  readonly revision: string;
  /** Nothing in its folder differs from what was closed. */
  readonly unchanged: boolean;
}

/**
 * How each shell was last closed, and whether its folder is still as it was then. `uncommitted`: files that differ from the last
 * commit. Empty outside Git.
 */
export async function closedAs(root: string, uncommitted: readonly string[] = []): Promise<ReadonlyMap<string, ClosedAs>> {
  if (!repositoryOf(root)) return new Map();
  const tags = await closingTags(root);
  const last = [...tags].flatMap(([shell, list]) => {
    const tag = list.at(-1);
    return tag ? [{ shell, tag }] : [];
  });
  if (last.length === 0) return new Map();
  // One question for all: a store may have a thousand closed shells.
  const input = last
    .flatMap(({ shell, tag }) => [tag.commit, 'HEAD'].map((commit) => at(root, commit, `shells/${shell}`)))
    .join('\n');
  const told = (await askGit(root, ['cat-file', '--batch-check=%(objectname)'], { input: `${input}\n` })).split('\n');
  return new Map(
    last.map(({ shell, tag }, i) => {
      const unchanged =
        isObject(told[2 * i]) &&
        told[2 * i] === told[2 * i + 1] &&
        !uncommitted.some((file) => file.startsWith(`shells/${shell}/`));
      return [shell, { tag: tag.name, revision: tag.revision, unchanged }];
    }),
  );
}

/** Else Git says that it is missing. */
const isObject = (told: string | undefined): boolean => /^[0-9a-f]+$/u.test(told ?? '');
