import type { Assessment } from '../../assess.js';
import type { BehindItem } from '../access/types.js';

/** What is within an arm's length behind an access panel, nearest first; undefined where it is no access panel with an outline. */
export function behind({ figures }: Assessment, panel: string): readonly BehindItem[] | undefined {
  return Object.hasOwn(figures.access.behind, panel) ? figures.access.behind[panel] : undefined;
}
