import { samples } from '../../compute/access/samples.js';
import { type Surface, surfaces, surfaceWords } from '../../compute/access/surfaces.js';
import type { TakeOff } from '../../compute/takeoff/types.js';
import { type Bounds, boundsOf, grow, overlap } from '../../geometry/box.js';
import { type Facet, facet, nearestOnFacet } from '../../geometry/facet.js';
import { segmentToFacet } from '../../geometry/segment-facet.js';
import { distance, type Vec3 } from '../../geometry/vector.js';
import { hasWay } from '../../model/placed.js';
import type { Model } from '../../model/shell.js';
import type { Panel } from '../../records/index.js';
import type { Face, FaceRun } from './types.js';

/** How deep behind a face is looked. */
export const LOOK_MM = 150;
/** A run without a recorded tolerance is taken to lie within this much of its record. */
export const ASSUMED_TOLERANCE_MM = 25;
/** Where on a run it comes nearest is told to half of this, or at a corner of it. */
const PIECE_MM = 50;

const ROUNDING_MM = 1e-3;

interface Sheet {
  readonly panel: Panel;
  readonly facet: Facet;
  readonly bounds: Bounds;
}

/**
 * What runs within 150 mm of the sheets that close each side, inside and outside, by its least depth: exact, from the face of the
 * sheet to the outside of the run, less its tolerance. All lengths in mm.
 */
export function faces(model: Model, takeOff: TakeOff): readonly Face[] {
  const { shell } = model;
  const sheets = shell.panels.filter((panel) => panel.panelKind !== 'access').flatMap(sheetOf);
  if (sheets.length === 0) return [];
  const sides = surfaces(model);
  const radius = new Map(takeOff.runs.map((run) => [run.id, (run.outsideDiameterMm ?? 0) / 2] as const));
  const byName = new Map<string, Sheet[]>();
  for (const sheet of sheets) {
    const name = faceName(sides.get(sheet.panel.id) as Surface);
    byName.set(name, [...(byName.get(name) ?? []), sheet]);
  }
  const ways = shell.runs.filter(hasWay).map((run) => ({
    run,
    bounds: grow(boundsOf(run.path), LOOK_MM),
    places: [...run.path, ...samples(run.path, PIECE_MM).map(({ at }) => at)],
    widenMm: (radius.get(run.id) ?? 0) + (run.toleranceMm ?? ASSUMED_TOLERANCE_MM),
  }));
  return [...byName].map(([name, of]) => ({
    name,
    panels: of.map(({ panel }) => panel.id),
    runs: ways
      .flatMap(({ run, bounds, places, widenMm }): readonly FaceRun[] => {
        let best: FaceRun | undefined;
        for (const { panel, facet: flat, bounds: around } of of) {
          const nearMm = (panel.thicknessMm ?? 0) / 2 + widenMm;
          if (!overlap(bounds, grow(around, nearMm + ROUNDING_MM))) continue;
          const depthMm = Math.max(0, distanceTo(flat, run.path) - nearMm);
          if (depthMm > LOOK_MM || (best && best.depthMm <= depthMm)) continue;
          const known = run.toleranceMm === undefined ? {} : { toleranceMm: run.toleranceMm };
          best = { id: run.id, medium: run.medium, panel: panel.id, depthMm, at: nearestPlace(places, flat), ...known };
        }
        return best ? [best] : [];
      })
      .sort((a, b) => a.depthMm - b.depthMm || (a.id < b.id ? -1 : 1)),
  }));
}

/** Least distance of a path from a sheet; none of a path of fewer than two places. */
const distanceTo = (sheet: Facet, path: readonly Vec3[]): number =>
  Math.min(...path.slice(1).map((to, i) => segmentToFacet(path[i] as Vec3, to, sheet)), Infinity);

const nearestPlace = (places: readonly Vec3[], sheet: Facet): Vec3 => {
  const away = places.map((at) => distance(at, nearestOnFacet(at, sheet)));
  return places[away.indexOf(Math.min(...away))] as Vec3;
};

function sheetOf(panel: Panel): readonly Sheet[] {
  const flat = facet(panel.outline, panel.holes);
  return flat ? [{ panel, facet: flat, bounds: boundsOf(panel.outline) }] : [];
}

/** `left outside`, `underside`, `ceiling`, `left lining`: what a painter or a fitter would call the side that a panel closes. */
function faceName(surface: Surface): string {
  const { side, seenFrom } = surface;
  if (side === 'floor') return 'floor inside';
  if (side === 'partition') return surfaceWords(surface);
  if (side === 'roof' || side === 'ceiling' || side === 'underside') return side;
  return `${side} ${seenFrom === 'inside' ? 'lining' : 'outside'}`;
}
