import { PHOTOS_OF_A_JOINT } from '../../compute/access/photos.js';
import type { Zone } from '../../records/index.js';
import type { Book } from '../book.js';
import { table } from '../table.js';

/** What the pictures show of all that is closed in, in one sentence; undefined where nothing is. */
export function photoHeadline({ assessment, show }: Book): string | undefined {
  const { runLengthMm, shownMm, joints } = assessment.figures.photos;
  if (runLengthMm === 0 && joints.length === 0) return undefined;
  const twice = joints.filter(({ photos }) => photos.length >= PHOTOS_OF_A_JOINT).length;
  const share = runLengthMm === 0 ? '' : `${show.length(shownMm)} of ${show.length(runLengthMm)} of concealed run`;
  const pairs = joints.length === 0 ? '' : `${twice} of ${joints.length} concealed joints in two pictures`;
  return `Pictures of before close-in show ${[share, pairs].filter(Boolean).join(' and ')}.`;
}

interface Row {
  readonly zone: Zone;
  readonly mm: number;
  readonly runs: readonly string[];
  readonly joints: readonly string[];
}

/** By cavity: the length of run that no picture shows, and the joints in fewer than two. */
export function photoGapTable(book: Book) {
  const { photos } = book.assessment.figures;
  const rows = book.assessment.model.shell.zones.flatMap((zone): readonly Row[] => {
    const gaps = photos.gaps.filter((gap) => gap.zones.includes(zone.id));
    const joints = photos.joints.filter((one) => one.zones.includes(zone.id) && one.photos.length < PHOTOS_OF_A_JOINT);
    if (gaps.length === 0 && joints.length === 0) return [];
    const mm = gaps.reduce((sum, gap) => sum + gap.toMm - gap.fromMm, 0);
    return [{ zone, mm, runs: [...new Set(gaps.map((gap) => gap.run))], joints: joints.map(({ id }) => id) }];
  });
  return table<Row>(book.show, {
    look: 'dense',
    rows,
    columns: (c) => [
      c.refs('Cavity', ({ zone }) => [zone.id]),
      c.length('Run in no picture', ({ mm }) => mm),
      c.text('Of', ({ runs }) => few(runs)),
      c.text('Joints in fewer than two', ({ joints }) => few(joints)),
      c.refs('Behind', ({ zone }) => zone.closedBy.slice(0, MOST)),
    ],
    empty: 'Every concealed run and joint on record is in the pictures.',
  });
}

const MOST = 4;
const few = (ids: readonly string[]): string =>
  ids.length > MOST ? `${ids.slice(0, MOST).join(', ')} and ${ids.length - MOST} more` : ids.join(', ');
