import { distance, lerp, type Vec3 } from '../../geometry/vector.js';

/** A short piece of a run by its middle. */
export interface Sample {
  readonly at: Vec3;
  readonly lengthMm: number;
}

/** Pieces of equal length on each stretch of a path, none longer than `most`. Their lengths add up to the path's. */
export function samples(path: readonly Vec3[], most = 100): readonly Sample[] {
  return path.slice(1).flatMap((to, i) => {
    const from = path[i] as Vec3;
    const lengthMm = distance(from, to);
    if (lengthMm === 0) return [];
    // A path of kilometres is a slip of units: told elsewhere, and not to be cut into a million pieces here.
    const count = Math.min(1000, Math.max(1, Math.ceil(lengthMm / most)));
    return Array.from({ length: count }, (_, k) => ({ at: lerp(from, to, (k + 0.5) / count), lengthMm: lengthMm / count }));
  });
}
