import { type Bounds, boundsOf, grow, overlap } from '../../geometry/box.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { tapeSolid } from '../../model/tape-solid.js';
import type { ServiceNode } from '../../records/index.js';

/** What stands this near the centre line, half an aisle, is on neither side, mm. House rule. */
const MIDDLE_MM = 300;
/** A node sits this near to the panel that opens it or to what it belongs to, mm: a forearm. House rule. */
const NEAR_MM = 500;

/**
 * The panel or equipment that a node names and that stands wholly on the other side of the coach, where the node's own place turned left
 * for right lies beside it: left and right were most likely exchanged. Undefined where nothing it names says so.
 */
export function mirroredFrom(
  { at, panel, of = [] }: Pick<ServiceNode, 'at' | 'panel' | 'of'>,
  { shell, library }: Pick<Model, 'shell' | 'library'>,
): string | undefined {
  if (at === undefined || Math.abs(at[1]) < MIDDLE_MM) return undefined;
  const turned: Vec3 = [at[0], -at[1], at[2]];
  const named = [...(panel === undefined ? [] : [panel]), ...of];
  const bounds = named.flatMap((id): readonly (readonly [string, Bounds])[] => {
    const entry = shell.byId.get(id);
    const solid = entry && tapeSolid(entry.kind, entry.record, library);
    return solid ? [[id, solid.bounds]] : [];
  });
  const across = bounds.filter(([, { min, max }]) => (at[1] < 0 ? min[1] > MIDDLE_MM : max[1] < -MIDDLE_MM));
  // One thing that it names on its own side, or within reach of it, is enough to believe its place.
  if (across.length < bounds.length || across.some(([, box]) => isBeside(at, box))) return undefined;
  return across.find(([, box]) => isBeside(turned, box))?.[0];
}

const isBeside = (at: Vec3, box: Bounds): boolean => overlap(boundsOf([at]), grow(box, NEAR_MM));
