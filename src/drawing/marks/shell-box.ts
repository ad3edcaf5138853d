import { type Extent, extentCorners, viewBounds } from '../extent.js';
import { type Mark, rectangle } from '../scene.js';
import type { Port } from '../sheet.js';
import type { PenName } from '../styles.js';

/** The outside of the shell alone, where its members would only hide what a reader looks for. */
export function shellBox(shell: Extent, port: Port, pen: PenName = 'edge'): Mark {
  const { x0, y0, x1, y1 } = viewBounds(port.view, extentCorners(shell));
  const [left, bottom] = port.placeFlat([x0, y0]);
  const [right, top] = port.placeFlat([x1, y1]);
  return rectangle('outlines', pen, { x0: left, y0: top, x1: right, y1: bottom });
}
