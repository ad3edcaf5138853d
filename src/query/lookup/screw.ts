import type { Computed } from '../../compute/figures.js';
import type { Vec3 } from '../../geometry/vector.js';
import { type ScrewDepth, screws } from '../release/screws.js';

/** The deepest safe screw through the face nearest to a place. */
export interface ScrewAt extends ScrewDepth {
  readonly panel: string;
  /** The place of the face that one drills from. */
  readonly at: Vec3;
}

/** A place is on a face within this of it, mm. */
export const FACE_MM = 25;

/** The screw at a place that is known to `uncertaintyMm`; undefined where no sheet is on record on whose face the place is. */
export function screwAt(assessment: Computed, place: Vec3, uncertaintyMm = 0): ScrewAt | undefined {
  const map = screws(assessment);
  const nearest = map.nearest(place);
  if (!nearest || nearest.distanceMm > FACE_MM) return undefined;
  return { panel: nearest.sheet.panel.id, at: nearest.at, ...map.depthAt(nearest.sheet, nearest.at, uncertaintyMm) };
}
