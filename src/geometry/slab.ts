import type { Vec3 } from './vector.js';

/** What lies between two planes square to x, y or z, mm; open where one is not given. */
export interface Slab {
  readonly axis: 0 | 1 | 2;
  readonly above?: number;
  readonly below?: number;
}

export const isInSlab = (at: Vec3, { axis, above, below }: Slab): boolean =>
  (above === undefined || at[axis] > above) && (below === undefined || at[axis] < below);
