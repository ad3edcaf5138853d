import { type Bounds, boundsOf, grow, overlap } from '../../geometry/box.js';
import type { Grid } from '../../geometry/grid.js';
import { alongRay } from '../../geometry/ray.js';
import { dot, type Vec3 } from '../../geometry/vector.js';
import { type DrilledSheet, onFace } from './drilled-sheets.js';
import { SCREW_LOOK_MM, SCREW_RADIUS_MM, type ScrewHit, type ScrewObstacle } from './screw-obstacles.js';

/** A sheet that begins this close under the face is laid on it, and the screw goes through both. Project default. */
const LAID_ON_MM = 12;
/** A box that is so much thicker all round reaches out of its bounds by so many times that at its corners, turned as it may be. */
const AT_CORNERS = Math.sqrt(3);
const ROUNDING_MM = 1e-3;

/** How deep a screw meets a thing; undefined where it does not, or where that ends no screw. */
export function screwMeets({ kind, met }: ScrewObstacle, start: Vec3, into: Vec3, widenMm: number): number | undefined {
  const depthMm = met(start, into, SCREW_RADIUS_MM + widenMm);
  if (depthMm === undefined || depthMm >= SCREW_LOOK_MM || (kind === 'panel' && depthMm < LAID_ON_MM)) return undefined;
  return depthMm;
}

/** The least deep hit of screws at several places of a sheet; where two are alike the first place's, and the first thing's. */
export function worstScrew(
  things: readonly ScrewObstacle[],
  index: Grid,
  sheet: DrilledSheet,
  places: readonly Vec3[],
  widenMm: number,
): ScrewHit | undefined {
  const starts = places.map((at) => onFace(sheet, at));
  const rays = starts.map((start) => boundsOf([start, alongRay(start, sheet.into, SCREW_LOOK_MM)]));
  const faceMm = Math.min(...starts.map((start) => dot(start, sheet.into)));
  const most = (SCREW_RADIUS_MM + widenMm) * AT_CORNERS;
  const near = index.near(grow(boundsOf(rays.flatMap(({ min, max }) => [min, max])), most));
  let worst: (ScrewHit & { readonly place: number; readonly thing: number }) | undefined;
  for (const { thing, fromMm, bounds } of nearestFirst(things, near, sheet.into, most)) {
    // Nothing that comes later can be met sooner.
    if (worst && fromMm - faceMm > worst.depthMm + ROUNDING_MM) break;
    const one = things[thing] as ScrewObstacle;
    for (let place = 0; place < starts.length; place++) {
      if (!overlap(bounds, rays[place] as Bounds)) continue;
      const depthMm = screwMeets(one, starts[place] as Vec3, sheet.into, widenMm);
      if (depthMm === undefined || (worst && !isBefore([depthMm, place, thing], [worst.depthMm, worst.place, worst.thing])))
        continue;
      worst = { id: one.id, kind: one.kind, depthMm, place, thing };
    }
  }
  return worst && { id: worst.id, kind: worst.kind, depthMm: worst.depthMm };
}

/** Each with the bounds that it cannot reach out of, and how far along the way into the sheet they begin. */
const nearestFirst = (things: readonly ScrewObstacle[], near: readonly number[], into: Vec3, mostMm: number) =>
  near
    .map((thing) => {
      const { kind, bounds: own } = things[thing] as ScrewObstacle;
      const bounds = grow(own, mostMm);
      // A sheet is met at its face, half its thickness before its plane.
      return { thing, bounds, fromMm: kind === 'panel' ? -Infinity : leastAlong(bounds, into) };
    })
    .sort((a, b) => a.fromMm - b.fromMm || a.thing - b.thing);

const leastAlong = ({ min, max }: Bounds, into: Vec3): number =>
  (into[0] > 0 ? min[0] : max[0]) * into[0] +
  (into[1] > 0 ? min[1] : max[1]) * into[1] +
  (into[2] > 0 ? min[2] : max[2]) * into[2];

type Standing = readonly [depthMm: number, place: number, thing: number];
const isBefore = (a: Standing, b: Standing): boolean => {
  const k = a.findIndex((value, i) => value !== b[i]);
  return k >= 0 && (a[k] as number) < (b[k] as number);
};
