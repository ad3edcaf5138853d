import type { Computed } from '../../compute/figures.js';
import { grow } from '../../geometry/box.js';
import type { Vec3 } from '../../geometry/vector.js';
import { SCREW_LOOK_MM } from '../release/screw-obstacles.js';
import { type ScrewDepth, type Screws, screws } from '../release/screws.js';

/** The deepest safe screw through the face nearest to a place. */
export interface ScrewAt extends ScrewDepth {
  readonly panel: string;
  /** The place of the face that one drills from. */
  readonly at: Vec3;
}

/** A place is on a face within this of it, mm. */
export const FACE_MM = 25;

/** A corner of an index's cell more, so that nothing is left out that a map of the sheet would have. */
const LEEWAY_MM = 50;

/** The screw at a place that is known to `uncertaintyMm`; undefined where no sheet is on record on whose face the place is. */
export type FindScrew = (place: Vec3, uncertaintyMm?: number) => ScrewAt | undefined;

export const screwAt = (assessment: Computed, place: Vec3, uncertaintyMm = 0): ScrewAt | undefined =>
  // As far as the face may lie, and from there as deep as is looked.
  findIn(
    screws(assessment, grow({ min: place, max: place }, FACE_MM + SCREW_LOOK_MM + uncertaintyMm + LEEWAY_MM)),
    place,
    uncertaintyMm,
  );

/** The same for place after place: the map of the whole shell is made once. */
export function screwFinder(assessment: Computed): FindScrew {
  const map = screws(assessment);
  return (place, uncertaintyMm = 0) => findIn(map, place, uncertaintyMm);
}

function findIn(map: Screws, place: Vec3, uncertaintyMm: number): ScrewAt | undefined {
  const nearest = map.nearest(place);
  if (!nearest || nearest.distanceMm > FACE_MM) return undefined;
  return { panel: nearest.sheet.panel.id, at: nearest.at, ...map.depthAt(nearest.sheet, nearest.at, uncertaintyMm) };
}
