import { PHOTOS_OF_A_JOINT, type PhotoCoverage } from '../../compute/access/photos.js';
import { type Json, place3 } from './json.js';

/** What pictures of before close-in show of the concealed runs and joints. */
export const photoCoverageJson = ({ runLengthMm, shownMm, joints, gaps, withoutExtent }: PhotoCoverage): Json => ({
  run_length_mm: runLengthMm,
  run_length_shown_mm: shownMm,
  joints: joints.length,
  joints_in_two: joints.filter(({ photos }) => photos.length >= PHOTOS_OF_A_JOINT).length,
  without_extent: withoutExtent,
  gaps: gaps.map((gap) => ({
    run: gap.run,
    from_mm: gap.fromMm,
    to_mm: gap.toMm,
    at_mm: [place3(gap.from), place3(gap.to)],
    zones: gap.zones,
    panels: gap.panels,
    closed: gap.closed,
  })),
});
