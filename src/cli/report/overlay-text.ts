import type { PictureNote } from '../../compute/camera/solve.js';
import type { Overlay } from '../../compute/pictures/overlay.js';
import type { SolvedPhoto } from '../../compute/pictures/solve-photo.js';
import { positionWords, smallLength, type UnitSystem } from '../../quantity/format.js';

/** How a point of `seen` is called: by its number and what it names. */
function pointName({ photo }: SolvedPhoto, i: number): string {
  const seen = photo.seen?.[i];
  const part = seen?.end ?? (seen?.corner === undefined ? undefined : `corner ${seen.corner}`);
  return `point ${i + 1}${seen?.is === undefined ? '' : ` (${seen.is}${part === undefined ? '' : ` ${part}`})`}`;
}

/** Why a picture cannot be used, and what to do; of a usable one, what to know. */
export function noteText(solved: SolvedPhoto, note: PictureNote, units: UnitSystem): string {
  const name = (i: number): string => pointName(solved, i);
  switch (note.what) {
    case 'too few': {
      const where = note.plane ? 'in one plane' : 'not in one plane';
      const focal = note.focal ? '' : ' and no focal length in its file';
      return `It has ${note.have} known ${note.have === 1 ? 'point' : 'points'} ${where}${focal}: mark ${note.need} or more under \`seen\`.`;
    }
    case 'outside':
      return `${capital(note.points.map(name).join(', '))}: outside the picture, which is ${solved.facts.widthPx} by ${solved.facts.heightPx} px. Count px from the upper left of the picture as it is shown upright.`;
    case 'twice':
      return `${capital(name(note.points[0]))} and ${name(note.points[1])} are one place or one pixel. Mark another.`;
    case 'on a line':
      return 'All known points are on one line. Mark some off that line.';
    case 'no fit':
      return 'No camera position fits these points. Check which point is which.';
    case 'mirrored':
      return 'The picture is mirrored: it would fit flipped. Mark the original.';
    case 'turned':
      return 'The pixels were counted on a copy turned a quarter turn. Count them on the picture as it is shown upright.';
    case 'cropped':
      return 'The focal length in its file does not fit: it is a crop, or was zoomed. The program left it out.';
    case 'over limit': {
      const suspects = note.suspects.length > 1 ? ` One of these may be wrong: ${note.suspects.map(name).join(', ')}.` : '';
      const worst = Number.isFinite(note.leftOutMm)
        ? `The worst point is ${smallLength(note.leftOutMm, units)} from where the other points put it`
        : 'Nobody can tell how well the points agree';
      return `${worst}; the limit is ${smallLength(note.limitMm, units)}.${suspects} Look at its points, or mark more of them.`;
    }
  }
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** The points and how well they agree, and what is drawn. */
export function overlayText({ solved, drawn }: Overlay, units: UnitSystem, written?: string): string {
  const lines = solved.points.map((point, i) => {
    const off = point.residualMm === undefined ? '' : `  off ${smallLength(point.residualMm, units)}`;
    const told = point.predictedMm === undefined ? '' : `  by the others ${smallLength(point.predictedMm, units)}`;
    return `  ${pointName(solved, i).padEnd(28)}${positionWords(point.at, units)}${off}${told}${point.leftOut ? '  left out: wrong' : ''}`;
  });
  for (const [i, { found, expected }] of solved.noPoints)
    lines.push(`  point ${i + 1} is not used: found ${found}, should be ${expected}`);
  const how = solved.method === 'camera' ? 'a camera in space' : 'the one plane of its points';
  const good = solved.leftOutMm === undefined ? '' : `, good to ± ${smallLength(Math.ceil(solved.leftOutMm), units)}`;
  const head = `Photo ${solved.photo.id} by ${how}: ${solved.usable ? `usable${good}` : 'not usable'}`;
  const notes = solved.notes.map((note) => noteText(solved, note, units));
  const kinds = new Map<string, number>();
  for (const { kind } of drawn) kinds.set(kind, (kinds.get(kind) ?? 0) + 1);
  const shown = [...kinds].map(([kind, count]) => `${count} ${kind}${count === 1 ? '' : 's'}`).join(', ');
  return [
    head,
    ...lines,
    ...notes,
    ...(drawn.length > 0 ? [`In its view: ${shown}.`] : []),
    ...(written ? [`Written: ${written}`] : []),
  ].join('\n');
}
