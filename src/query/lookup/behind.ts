import type { BehindItem } from '../../compute/access/types.js';
import type { Computed } from '../../compute/figures.js';
import { getOwn } from '../../get-own.js';

/** What is within an arm's length behind an access panel, nearest first; undefined where it is no access panel with an outline. */
export function behind({ figures }: Computed, panel: string): readonly BehindItem[] | undefined {
  return getOwn(figures.access.behind, panel);
}
