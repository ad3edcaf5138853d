import { floorHeight } from '../../compute/access/approach.js';
import { surfaces } from '../../compute/access/surfaces.js';
import type { Model } from '../../model/shell.js';
import { ASSUMED_TOLERANCE_MM } from './faces.js';

/** What begins so far under the floor that one stands on. */
export interface UnderFloor {
  readonly id: string;
  /** From the floor down to its middle line, its tolerance taken off, mm. */
  readonly depthMm: number;
  /** From where to where aft of the datum it lies so shallow, mm. */
  readonly fromMm: number;
  readonly toMm: number;
}

/** A screw through a floor and what it stands on is hardly longer, mm. Project default. */
const LOOK_MM = 150;

/**
 * Where no floor sheet is recorded, and so no sheet says how deep one may screw: what is recorded within 150 mm under the height that one
 * stands on, shallowest first. Undefined where a floor sheet is recorded, or nothing says how high the floor is.
 */
export function underFloor(model: Model): readonly UnderFloor[] | undefined {
  const sides = surfaces(model);
  if (model.shell.panels.some(({ id }) => sides.get(id)?.side === 'floor')) return undefined;
  const floorMm = floorHeight(model);
  if (floorMm === undefined) return undefined;
  const runs = model.shell.runs.flatMap(({ id, path, toleranceMm }) => {
    const under = path.filter(([, , z]) => z < floorMm && floorMm - z <= LOOK_MM);
    return under.length === 0 ? [] : [of(id, under, toleranceMm)];
  });
  const nodes = model.shell.nodes.flatMap(({ id, at, toleranceMm }) =>
    at && at[2] < floorMm && floorMm - at[2] <= LOOK_MM ? [of(id, [at], toleranceMm)] : [],
  );
  return [...runs, ...nodes].sort((a, b) => a.depthMm - b.depthMm || a.fromMm - b.fromMm);

  function of(
    id: string,
    places: readonly (readonly [number, number, number])[],
    toleranceMm = ASSUMED_TOLERANCE_MM,
  ): UnderFloor {
    const xs = places.map(([x]) => x);
    const high = Math.max(...places.map(([, , z]) => z));
    const depthMm = Math.max(0, (floorMm as number) - high - toleranceMm);
    return { id, depthMm, fromMm: Math.min(...xs), toMm: Math.max(...xs) };
  }
}
