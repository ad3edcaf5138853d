import type { BehindItem } from '../access/types.js';
import type { Computed } from '../figures.js';

/** What is within an arm's length behind an access panel, nearest first; undefined where it is no access panel with an outline. */
export function behind({ figures }: Computed, panel: string): readonly BehindItem[] | undefined {
  return Object.hasOwn(figures.access.behind, panel) ? figures.access.behind[panel] : undefined;
}
