import type { Computed } from '../../compute/figures.js';
import type { Vec3 } from '../../geometry/vector.js';
import { type ScrewDepth, screws } from '../release/screws.js';

/** The deepest safe screw through the face nearest to a place. */
export interface ScrewAt extends ScrewDepth {
  readonly panel: string;
  /** The place of the face that one drills from. */
  readonly at: Vec3;
}

/** A face further than this from the place asked is not the one meant, mm. House value. */
const FACE_MM = 300;

/** Undefined where no sheet is on record near the place. */
export function screwAt(assessment: Computed, place: Vec3): ScrewAt | undefined {
  const map = screws(assessment);
  const nearest = map.nearest(place);
  if (!nearest || nearest.distanceMm > FACE_MM) return undefined;
  return { panel: nearest.sheet.panel.id, at: nearest.at, ...map.depthAt(nearest.sheet, nearest.at) };
}
