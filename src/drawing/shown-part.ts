import type { Vec3 } from '../geometry/vector.js';

/** The part of a coach that a view of it shows: between two planes square to x, y or z, mm. What lies beyond is of another side. */
export interface ShownPart {
  readonly axis: 0 | 1 | 2;
  /** Nothing at or below this is shown, where it is given. */
  readonly above?: number;
  /** Nothing at or over this is shown, where it is given. */
  readonly below?: number;
}

export const isShown = (at: Vec3, { axis, above, below }: ShownPart): boolean =>
  (above === undefined || at[axis] > above) && (below === undefined || at[axis] < below);
