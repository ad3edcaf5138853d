import type { Box } from '../../geometry/box.js';
import { boxBetween } from '../../geometry/box.js';
import { add, scale } from '../../geometry/vector.js';

export { lineWalls } from '../../sections/line-walls.js';

/** A component's outside as a box along the datum's axes; undefined where its size is not recorded. */
export function componentBox(component: {
  readonly at: Box['center'];
  readonly middle?: Box['center'];
  readonly sizeMm?: Box['center'];
}): Box | undefined {
  if (!component.sizeMm) return undefined;
  const half = scale(component.sizeMm, 0.5);
  const middle = component.middle ?? component.at;
  return boxBetween(add(middle, scale(half, -1)), add(middle, half));
}
