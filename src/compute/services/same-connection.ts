import { distance } from '../../geometry/vector.js';
import type { PlacedNode } from '../../model/placed.js';

/** Two connections cannot be nearer than this, mm. */
const SAME_PLACE_MM = 1;

/** Whether two nodes are one connection under two ids: of one service and kind, at the very same place. */
export const isSameConnection = (a: PlacedNode, b: PlacedNode): boolean =>
  a.service === b.service && a.nodeKind === b.nodeKind && distance(a.at, b.at) < SAME_PLACE_MM;
