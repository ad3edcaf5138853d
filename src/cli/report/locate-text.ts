import type { LocatedInPhoto } from '../../compute/pictures/locate.js';
import type { SolvedPhoto } from '../../compute/pictures/solve-photo.js';
import { positionWords, smallLength, type UnitSystem } from '../../quantity/format.js';
import { noteText } from './overlay-text.js';

const WHY = {
  'not usable': 'not usable',
  'no surface': 'it has no surface on record',
  'other plane':
    'it lies in another plane than the points that are marked, and the picture is tied to that plane alone: mark points off it, or use one whose file has the focal length',
  misses: 'the line of sight does not meet it',
} as const;

export function locateText(solved: SolvedPhoto, on: string, found: LocatedInPhoto, units: UnitSystem): string {
  if ('at' in found)
    return `On ${on}: ${positionWords(found.at, units)}, ± ${smallLength(Math.ceil(found.uncertaintyMm), units)} (19 times in 20)`;
  if (found.why === 'not usable')
    return [`Photo ${solved.photo.id} cannot be used:`, ...solved.notes.map((note) => noteText(solved, note, units))].join('\n');
  return `No place on ${on}: ${WHY[found.why]}.`;
}
