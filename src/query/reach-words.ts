import { REACH_MM } from '../compute/access/reach.js';
import type { PanelReach, Reach } from '../compute/access/types.js';

const REACH_WORDS: Readonly<Record<Reach, string>> = {
  hand: 'by hand',
  forearm: 'to the forearm',
  arm: 'to the arm',
  beyond: 'beyond reach',
};

/** How far in a hand must go: the same words at the prompt and in the books. */
export const reachWords = (reach: Reach): string => REACH_WORDS[reach];

/**
 * The same for something at a distance: where it lies nearer than its reach says, the reach is the longer because its place is
 * known to so much only, or because the way to it is round something. `length` writes millimetres in the reader's units.
 */
export function reachAt(
  { reach, distanceMm, toleranceMm }: Pick<PanelReach, 'reach' | 'distanceMm' | 'toleranceMm'>,
  { length }: { readonly length: (mm: number) => string },
): string {
  const words = reachWords(reach);
  const nearer = (reach === 'forearm' && distanceMm <= REACH_MM.hand) || (reach === 'arm' && distanceMm <= REACH_MM.forearm);
  if (!nearer) return words;
  return toleranceMm === undefined ? `${words}, past the rim` : `${words}, since it is located only to ±${length(toleranceMm)}`;
}
