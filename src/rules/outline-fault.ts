import { facet } from '../geometry/facet.js';
import { crossingSides } from '../geometry/planar.js';
import type { Vec3 } from '../geometry/vector.js';

/** What is wrong with an outline, as the end of a sentence that begins with what it is of; undefined where it encloses one area. */
export function outlineFault(outline: readonly Vec3[]): string | undefined {
  const flat = facet(outline);
  if (!flat) return 'encloses no area, expected at least three corners that are not on one line';
  const sides = crossingSides(flat.outline);
  if (!sides) return undefined;
  const side = (i: number): string => `${i + 1}–${((i + 1) % outline.length) + 1}`;
  return `crosses itself where the side between corners ${side(sides[0])} meets the side between corners ${side(sides[1])}, expected sides that meet at corners only`;
}
