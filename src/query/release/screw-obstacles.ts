import { type Solid, solids } from '../../compute/access/standing.js';
import type { Computed, Figures } from '../../compute/figures.js';
import { keptOr } from '../../compute/lazy.js';
import { heatAffectedMetal } from '../../compute/welding/weld-bands.js';
import { type Bounds, type Box, boundsOf, boxBounds, clipToBox, grow, overlap } from '../../geometry/box.js';
import { facet, throughFacet } from '../../geometry/facet.js';
import { alongRay, rayToBall, rayToTube } from '../../geometry/ray.js';
import type { Vec3 } from '../../geometry/vector.js';
import { placedNodes } from '../../model/placed.js';
import type { Model } from '../../model/shell.js';
import { ASSUMED_TOLERANCE_MM } from './faces.js';

/** How deep a screw is looked for: 6 in. */
export const SCREW_LOOK_MM = 152.4;
/** A screw of 1/4 in is taken: half its thickness. Project default. */
export const SCREW_RADIUS_MM = 3.175;

/** Something that a screw would meet, and how deep under the face. */
export interface ScrewHit {
  readonly id: string;
  readonly kind: 'run' | 'node' | Solid['kind'] | 'weld' | 'panel';
  readonly depthMm: number;
}

/** Something that a screw must not meet. */
export interface ScrewObstacle {
  readonly id: string;
  readonly kind: ScrewHit['kind'];
  readonly bounds: Bounds;
  /** How far along a ray it is met when it is so much thicker all round. */
  met(start: Vec3, along: Vec3, widenMm: number): number | undefined;
}

/** Runs, nodes, equipment, welds and sheets; with `about`, those whose bounds come into it. */
export function screwThings(
  of: Pick<Computed, 'model' | 'kept'> & { readonly figures: Pick<Figures, 'takeOff' | 'joints'> },
  about?: Bounds,
): readonly ScrewObstacle[] {
  const { model, figures } = of;
  const isNear = (bounds: Bounds): boolean => !about || overlap(bounds, about);
  const things = [...runThings(model, figures), ...nodeThings(model), ...solidThings(model), ...weldThings(of)];
  return [...things.filter(({ bounds }) => isNear(bounds)), ...sheetThings(model, isNear)];
}

function runThings({ shell }: Model, { takeOff }: Pick<Figures, 'takeOff'>): readonly ScrewObstacle[] {
  const outside = new Map(takeOff.runs.map((run) => [run.id, run.outsideDiameterMm ?? 0] as const));
  return shell.runs.flatMap((run) => {
    const radius = (outside.get(run.id) ?? 0) / 2 + (run.toleranceMm ?? ASSUMED_TOLERANCE_MM);
    return run.path.slice(1).map((to, i): ScrewObstacle => {
      const from = run.path[i] as Vec3;
      return {
        id: run.id,
        kind: 'run',
        bounds: grow(boundsOf([from, to]), radius + SCREW_RADIUS_MM),
        met: (start, along, widenMm) => rayToTube(start, along, from, to, radius + widenMm),
      };
    });
  });
}

const nodeThings = ({ shell }: Model): readonly ScrewObstacle[] =>
  placedNodes(shell.nodes).map(({ id, at, toleranceMm = ASSUMED_TOLERANCE_MM }) => ({
    id,
    kind: 'node',
    bounds: grow({ min: at, max: at }, toleranceMm + SCREW_RADIUS_MM),
    met: (start, along, widenMm) => rayToBall(start, along, at, toleranceMm + widenMm),
  }));

/** Equipment, tanks, bays and chassis rails. */
const solidThings = (model: Model): readonly ScrewObstacle[] => {
  const known = new Map(model.shell.components.map(({ id, toleranceMm }) => [id, toleranceMm] as const));
  return solids(model).map(({ id, kind, box }) => boxThing(id, kind, widened(box, known.get(id) ?? ASSUMED_TOLERANCE_MM)));
};

const weldThings = (of: Parameters<typeof screwThings>[0]): readonly ScrewObstacle[] =>
  // By itself and not among all that is kept: a page carries this file, and what it needs must need no file or process.
  keptOr(of.kept, 'heatAffected', () => heatAffectedMetal(of.figures.joints.joints)).map(({ id, box }) =>
    boxThing(id, 'weld', box),
  );

/** A screw that comes out through the sheet on the other side is too long. */
const sheetThings = ({ shell }: Model, isNear: (bounds: Bounds) => boolean): readonly ScrewObstacle[] =>
  shell.panels.flatMap((panel): readonly ScrewObstacle[] => {
    const bounds = boundsOf(panel.outline);
    if (!isNear(bounds)) return [];
    const sheet = facet(panel.outline, panel.holes);
    if (!sheet) return [];
    const met: ScrewObstacle['met'] = (start, along) => {
      const share = throughFacet(start, alongRay(start, along, SCREW_LOOK_MM), sheet);
      return share === undefined ? undefined : Math.max(0, share * SCREW_LOOK_MM - (panel.thicknessMm ?? 0) / 2);
    };
    return [{ id: panel.id, kind: 'panel', bounds, met }];
  });

const widened = (box: Box, by: number): Box => ({ ...box, half: box.half.map((half) => half + by) as unknown as Box['half'] });

function boxThing(id: string, kind: ScrewObstacle['kind'], box: Box): ScrewObstacle {
  // Asked by the same screw at every place of a sheet.
  let [wide, byMm] = [box, 0];
  return {
    id,
    kind,
    bounds: grow(boxBounds(box), SCREW_RADIUS_MM),
    met(start, along, widenMm) {
      if (widenMm !== byMm) [wide, byMm] = [widened(box, widenMm), widenMm];
      const part = clipToBox(start, alongRay(start, along, SCREW_LOOK_MM), wide);
      return part && part[0] * SCREW_LOOK_MM;
    },
  };
}
