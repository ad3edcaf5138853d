import { type Facet, facet, height, inFacet, isInPolygon, onFacet } from '../../geometry/facet.js';
import { clipToConvex, type Point, signedArea } from '../../geometry/planar.js';
import { planarPolygon } from '../../geometry/polygon.js';
import { dot, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Opening, Panel } from '../../records/index.js';
import { openingCorners } from '../solids.js';

export interface CutOut {
  readonly areaMm2: number;
  readonly centroid: Vec3;
}

/** An opening is cut through the panels that lie within this distance of its own plane: a wall's skin and its lining. Project default. */
const WALL_DEPTH_MM = 100;
/** Cosine of the largest angle between an opening and a panel that it is cut through (about 10°). */
const SAME_PLANE = 0.985;

/**
 * What is cut from a panel: its own holes, the clear opening of each access panel set in it, and the openings of the wall that it
 * lies in. What a hole in the record already covers is not taken off twice.
 */
export function cutOuts(panel: Panel, { shell }: Model): readonly CutOut[] {
  const holes = panel.holes.map((hole) => planarPolygon(hole)).map(({ area, centroid }) => ({ areaMm2: area, centroid }));
  const plane = facet(panel.outline, panel.holes);
  if (!plane) return [];
  const inHole = (point: Point): boolean => plane.holes.some((hole) => isInPolygon(point, hole));
  const access = shell.panels
    .filter((other) => other.of === panel.id && other.openingMm !== undefined)
    .map((other) => ({ areaMm2: clearArea(other), centroid: planarPolygon(other.outline).centroid }))
    .filter((cut) => !inHole(inFacet(cut.centroid, plane)));
  const walls = shell.openings.flatMap((opening) => throughWall(opening, plane));
  return [...holes, ...access, ...walls];
}

const clearArea = ({ openingMm }: Panel): number => (openingMm ? openingMm[0] * openingMm[1] : 0);

function throughWall(opening: Opening, plane: Facet): readonly CutOut[] {
  const corners = openingCorners(opening);
  if (!corners) return [];
  const own = planarPolygon(corners);
  const away = Math.abs(height(own.centroid, plane));
  if (own.area === 0 || away > WALL_DEPTH_MM || Math.abs(dot(own.normal, plane.normal)) < SAME_PLANE) return [];
  const flat = corners.map((corner) => inFacet(corner, plane));
  const convex = signedArea(flat) < 0 ? [...flat].reverse() : flat;
  if (plane.holes.some((hole) => Math.abs(signedArea(clipToConvex(hole, convex))) > 0)) return [];
  const inside = clipToConvex(plane.outline, convex);
  if (inside.length < 3) return [];
  const { area, centroid } = planarPolygon(inside.map(([along, across]) => onFacet(plane, along, across)));
  return area > 0 ? [{ areaMm2: area, centroid }] : [];
}
