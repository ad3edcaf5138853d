import { isInPolygon, onFacet } from '../../geometry/facet.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { DrilledSheet } from './drilled-sheets.js';
import { SCREW_LOOK_MM } from './screw-obstacles.js';
import { CELL_WIDEN_MM, type Screws } from './screws.js';

/** A rectangle of a sheet, and the deepest screw that meets nothing anywhere in it. */
export interface ScrewArea {
  /** Column and row on the sheet, from its corner. */
  readonly column: number;
  readonly row: number;
  /** Its four corners, in order around it. */
  readonly corners: readonly Vec3[];
  /** Never more than is true at any place of it, mm. */
  readonly depthMm: number;
  /** What ends it, where something does. */
  readonly meets?: string;
}

/** Areas are about so wide: six inches. mm */
const AREA_MM = 152.4;
/** Each is looked at in squares of this size, each counting by its worst place. mm */
const STEP_MM = Math.floor(CELL_WIDEN_MM * Math.SQRT2);
/** A sheet of more areas is a slip of units, and is left out. */
const MOST_AREAS = 8_000;

/** A sheet by areas of about six inches: what one may screw into each of them, square in. */
export function screwAreas(map: Screws, sheet: DrilledSheet): readonly ScrewArea[] {
  const { facet, span } = sheet;
  const columns = Math.max(1, Math.round((span.max[0] - span.min[0]) / AREA_MM));
  const rows = Math.max(1, Math.round((span.max[1] - span.min[1]) / AREA_MM));
  if (columns * rows > MOST_AREAS) return [];
  const [wide, high] = [(span.max[0] - span.min[0]) / columns, (span.max[1] - span.min[1]) / rows];
  const areas: ScrewArea[] = [];
  for (let column = 0; column < columns; column++) {
    for (let row = 0; row < rows; row++) {
      const [u, v] = [span.min[0] + column * wide, span.min[1] + row * high];
      const found = worstIn(map, sheet, [u, v], [wide, high]);
      if (found === undefined) continue;
      const corners = [
        onFacet(facet, u, v),
        onFacet(facet, u + wide, v),
        onFacet(facet, u + wide, v + high),
        onFacet(facet, u, v + high),
      ];
      areas.push({ column, row, corners, ...found });
    }
  }
  return areas;
}

/** Undefined where the sheet has no metal in the rectangle. */
function worstIn(
  map: Screws,
  sheet: DrilledSheet,
  [u, v]: readonly [number, number],
  [wide, high]: readonly [number, number],
): Pick<ScrewArea, 'depthMm' | 'meets'> | undefined {
  const { facet } = sheet;
  const [across, up] = [Math.ceil(wide / STEP_MM), Math.ceil(high / STEP_MM)];
  const places: Vec3[] = [];
  for (let i = 0; i < across; i++) {
    for (let k = 0; k < up; k++) {
      const at = [u + ((i + 0.5) * wide) / across, v + ((k + 0.5) * high) / up] as const;
      if (!isInPolygon(at, facet.outline) || facet.holes.some((hole) => isInPolygon(at, hole))) continue;
      places.push(onFacet(facet, at[0], at[1]));
    }
  }
  if (places.length === 0) return undefined;
  const met = map.worstAt(sheet, places, CELL_WIDEN_MM);
  return met ? { depthMm: met.depthMm, meets: met.id } : { depthMm: SCREW_LOOK_MM };
}
