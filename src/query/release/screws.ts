import type { Computed, Figures } from '../../compute/figures.js';
import { type Bounds, boundsOf, grow, overlap } from '../../geometry/box.js';
import { nearestOnFacet } from '../../geometry/facet.js';
import { grid } from '../../geometry/grid.js';
import { alongRay } from '../../geometry/ray.js';
import { distance, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { metalBounds } from '../metal-bounds.js';
import { type DrilledSheet, drilledSheets, onFace } from './drilled-sheets.js';
import { type MetalBehind, metalAlong, type ScrewMetal, screwMetalOf } from './screw-metal.js';
import { SCREW_LOOK_MM, type ScrewHit, type ScrewObstacle, screwThings } from './screw-obstacles.js';
import { screwMeets, worstScrew } from './worst-screw.js';

const CELL_MM = 150;

export interface ScrewDepth {
  /** The longest screw under its head, from the face, that meets nothing recorded; at most how deep is looked. Never negative. */
  readonly depthMm: number;
  /** What ends it. Absent where nothing is met as deep as is looked. */
  readonly meets?: ScrewHit;
  /** The first run, node or component, whatever else comes before it. */
  readonly service?: ScrewHit;
  /** Members behind the face, nearest first: where metal begins and ends under the face. */
  readonly metal: readonly MetalBehind[];
}

/** What a screw's depth is worked out from. */
export interface ScrewsOf extends Pick<Computed, 'model' | 'kept'> {
  readonly figures: Pick<Figures, 'takeOff' | 'joints'>;
}

export interface Screws {
  readonly sheets: readonly DrilledSheet[];
  /** Square into the sheet at the place of it nearest to `at`; everything is `widenMm` thicker than its tolerance asks. */
  depthAt(sheet: DrilledSheet, at: Vec3, widenMm?: number): ScrewDepth;
  /** What ends the shortest of the screws at these places of one sheet; undefined where none meets anything as deep as is looked. */
  worstAt(sheet: DrilledSheet, places: readonly Vec3[], widenMm: number): ScrewHit | undefined;
  /** The sheet nearest to a place, and the place of its face. */
  nearest(at: Vec3): { readonly sheet: DrilledSheet; readonly at: Vec3; readonly distanceMm: number } | undefined;
}

/**
 * The deepest screw that meets nothing, at any place of any sheet: runs by their outside and nodes, each widened by its tolerance,
 * components with a size, 1 in each way about every joint of members, and the sheet on the other side.
 * Members are no hindrance but something to screw into. With `about`, only sheets, things and metal whose bounds come into it are looked
 * at: for one place, not for a map.
 */
export function screws(of: ScrewsOf, about?: Bounds): Screws {
  const { model } = of;
  const things = screwThings(of, about);
  const index = grid(
    things.map(({ bounds }, i) => ({ index: i, bounds: grow(bounds, CELL_WIDEN_MM) })),
    CELL_MM,
  );
  const metal = screwMetalOf(model, about && comesInto(model, about));
  const metalIndex = grid(
    metal.map(({ bounds }, i) => ({ index: i, bounds })),
    CELL_MM,
  );
  const sheets = drilledSheets(model, about);
  return {
    sheets,
    depthAt(sheet, at, widenMm = 0) {
      const start = onFace(sheet, at);
      const ray = boundsOf([start, alongRay(start, sheet.into, SCREW_LOOK_MM)]);
      let meets: (ScrewHit & { readonly thing: number }) | undefined;
      let service: typeof meets;
      // Of two that are met alike the first counts.
      const isSooner = (depthMm: number, thing: number, than: typeof meets): boolean =>
        !than || depthMm < than.depthMm || (depthMm === than.depthMm && thing < than.thing);
      index.visit(widenMm > CELL_WIDEN_MM ? grow(ray, widenMm - CELL_WIDEN_MM) : ray, (thing) => {
        const one = things[thing] as ScrewObstacle;
        const depthMm = screwMeets(one, start, sheet.into, widenMm);
        if (depthMm === undefined) return false;
        const { id, kind } = one;
        const hit = { id, kind, depthMm, thing };
        if (isSooner(depthMm, thing, meets)) meets = hit;
        if (kind !== 'weld' && kind !== 'panel' && isSooner(depthMm, thing, service)) service = hit;
        return false;
      });
      const behind = metalIndex.near(ray).map((i) => metal[i] as ScrewMetal);
      const told = { ...(meets ? { meets: hitOf(meets) } : {}), ...(service ? { service: hitOf(service) } : {}) };
      return {
        depthMm: (meets as ScrewHit | undefined)?.depthMm ?? SCREW_LOOK_MM,
        ...told,
        metal: metalAlong(behind, start, sheet.into),
      };
    },
    worstAt: (sheet, places, widenMm) => worstScrew(things, index, sheet, places, widenMm),
    nearest(at) {
      let best: ReturnType<Screws['nearest']>;
      for (const sheet of sheets) {
        const place = onFace(sheet, nearestOnFacet(at, sheet.facet));
        const distanceMm = distance(place, at);
        if (!best || distanceMm < best.distanceMm) best = { sheet, at: place, distanceMm };
      }
      return best;
    },
  };
}

const hitOf = ({ id, kind, depthMm }: ScrewHit): ScrewHit => ({ id, kind, depthMm });

function comesInto(model: Model, about: Bounds): (id: string) => boolean {
  const bounds = metalBounds(model);
  return (id) => {
    const own = bounds.get(id);
    return own !== undefined && overlap(own, about);
  };
}

/** Half the diagonal of a cell of a map at most: the index allows for it. */
export const CELL_WIDEN_MM = 22;
