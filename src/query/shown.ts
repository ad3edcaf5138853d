import { floorHeight } from '../compute/access/approach.js';
import { type Overall, overall } from '../compute/access/overall.js';
import { type Solid, solids } from '../compute/access/standing.js';
import { type Surface, surfaces } from '../compute/access/surfaces.js';
import { zoneMap } from '../compute/access/zones.js';
import type { Computed } from '../compute/figures.js';
import { heatAffectedMetal } from '../compute/welding/weld-bands.js';
import type { Box } from '../geometry/box.js';
import type { Vec3 } from '../geometry/vector.js';
import type { Model } from '../model/shell.js';
import type { Shell, Zone } from '../records/index.js';

/** What pages and drawings show without a question being asked: they read it here and compute nothing. Lengths in mm, in the datum. */

/** The surface of every panel, by the panel's id. */
export const panelSurfaces = (model: Model): ReadonlyMap<string, Surface> => surfaces(model);

/** Height of the floor that one stands on inside; undefined where neither a floor nor a door's sill is recorded. */
export const floorMmOf = (model: Model): number | undefined => floorHeight(model);

export type { Solid };

/** Sizes over everything on record. */
export const overallSizes = (model: Model): Overall | undefined => overall(model);

/** What stands in the coach, each as a box. */
export const solidsIn = (model: Model): readonly Solid[] => solids(model);

/** Boxes about the welds in which the metal has lost its temper, by the weld that did it. */
export const heatAffectedBoxes = ({ figures }: Computed): readonly { readonly id: string; readonly box: Box }[] =>
  heatAffectedMetal(figures.joints.joints);

/** The cavities that hold a place. */
export function zonesHolding({ zones }: Shell): (at: Vec3) => readonly Zone[] {
  const map = zoneMap(zones);
  return (at) => map.holding(at);
}
