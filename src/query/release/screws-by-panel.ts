import { type Facet, isInPolygon, onFacet } from '../../geometry/facet.js';
import type { Vec3 } from '../../geometry/vector.js';
import type { DrilledSheet } from './drilled-sheets.js';
import type { ScrewHit } from './screw-obstacles.js';
import { CELL_WIDEN_MM, type Screws } from './screws.js';

/** What may be screwed into one panel. */
export interface PanelScrews {
  readonly panel: string;
  /** The shallowest run, node or component behind it and where on the face; absent where none is as deep as is looked. */
  readonly shallowest?: ScrewHit & { readonly at: Vec3 };
  /** For each depth asked: the share of the face (0–1) where a screw so long meets nothing. */
  readonly free: readonly number[];
  /** Members that give metal to screw into, by how much of the face they stand behind. */
  readonly metal: readonly string[];
}

/** The face is looked at in squares of this size; each counts by its worst place. mm */
const STEP_MM = Math.floor(CELL_WIDEN_MM * Math.SQRT2);
/** A panel of more squares is a slip of units, and is not judged. */
const MOST_SQUARES = 250_000;

/** For every sheet in turn. `depthsMm` ascend. A sheet too large to be true is left out. */
export function screwsByPanel(map: Screws, depthsMm: readonly number[]): readonly PanelScrews[] {
  return map.sheets.flatMap((sheet) => {
    const places = squares(sheet.facet);
    return places.length === 0 ? [] : [onePanel(map, sheet, places, depthsMm)];
  });
}

function onePanel(map: Screws, sheet: DrilledSheet, places: readonly Vec3[], depthsMm: readonly number[]): PanelScrews {
  const free = depthsMm.map(() => 0);
  const metal = new Map<string, number>();
  let shallowest: PanelScrews['shallowest'];
  for (const at of places) {
    const found = map.depthAt(sheet, at, CELL_WIDEN_MM);
    depthsMm.forEach((depth, k) => {
      if (found.depthMm >= depth) free[k] = (free[k] as number) + 1 / places.length;
    });
    if (found.service && (!shallowest || found.service.depthMm < shallowest.depthMm)) shallowest = { ...found.service, at };
    for (const { id } of found.metal) metal.set(id, (metal.get(id) ?? 0) + 1);
  }
  return {
    panel: sheet.panel.id,
    ...(shallowest ? { shallowest } : {}),
    free,
    metal: [...metal].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([id]) => id),
  };
}

/** Middles of the squares whose middle the sheet covers. */
function squares(sheet: Facet): readonly Vec3[] {
  const span = (k: 0 | 1): readonly [number, number] => {
    const values = sheet.outline.map((corner) => corner[k]);
    return [Math.min(...values), Math.max(...values)];
  };
  const [[lowU, highU], [lowV, highV]] = [span(0), span(1)];
  const [across, up] = [Math.ceil((highU - lowU) / STEP_MM), Math.ceil((highV - lowV) / STEP_MM)];
  if (across * up > MOST_SQUARES) return [];
  const found: Vec3[] = [];
  for (let i = 0; i < across; i++) {
    for (let k = 0; k < up; k++) {
      const at = [lowU + ((i + 0.5) * (highU - lowU)) / across, lowV + ((k + 0.5) * (highV - lowV)) / up] as const;
      const covered = isInPolygon(at, sheet.outline) && !sheet.holes.some((hole) => isInPolygon(at, hole));
      if (covered) found.push(onFacet(sheet, at[0], at[1]));
    }
  }
  return found;
}
