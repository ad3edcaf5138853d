import { own } from '../../own.js';
import type { BehindItem } from '../access/types.js';
import type { Computed } from '../figures.js';

/** What is within an arm's length behind an access panel, nearest first; undefined where it is no access panel with an outline. */
export function behind({ figures }: Computed, panel: string): readonly BehindItem[] | undefined {
  return own(figures.access.behind, panel);
}
