import { unplaced } from '../../model/placed.js';
import type { Model } from '../../model/shell.js';

/** Ids named before the others are counted. */
const MOST_NAMED = 6;

/** What has no recorded place may be there all the same: said with every answer about what is near. */
export function notPlacedNote({ shell }: Model): readonly string[] {
  const lost = unplaced(shell);
  if (lost.length === 0) return [];
  const more = lost.length > MOST_NAMED ? ` and ${lost.length - MOST_NAMED} more` : '';
  return [`No place is recorded for ${lost.slice(0, MOST_NAMED).join(', ')}${more}: not in this answer, but possibly there.`];
}
