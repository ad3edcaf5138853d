import type { Side } from '../compute/access/surfaces.js';
import { lerp, type Vec3 } from '../geometry/vector.js';
import type { Model } from '../model/shell.js';
import { floorMmOf, panelSurfaces } from '../query/shown.js';
import { shellExtent } from './extent.js';

/** Where a wire or a pipe lies, as one who looks for it goes about: a drawing each. */
export const LAYERS_OF_SERVICES = ['belly', 'floor', 'left', 'right', 'front', 'rear', 'ceiling'] as const;
export type ServiceLayer = (typeof LAYERS_OF_SERVICES)[number];

/** What lies this near to a lining, or to the skin where there is none, is in the wall; the same of the ceiling, mm. Project default. */
const IN_SHEET_MM = 30;
const IN_WALL_MM = 130;
const IN_ROOF_MM = 250;
/** Under this, where neither a floor nor a door's sill is recorded, mm over the lowest of the shell. Project default. */
const IN_FLOOR_MM = 330;

/** Planes between the layers, mm in the datum. */
export interface LayerPlanes {
  readonly floorMm: number;
  readonly ceilingMm: number;
  readonly leftMm: number;
  readonly rightMm: number;
  readonly frontMm: number;
  readonly rearMm: number;
  /** No floor and no sill is recorded: the floor's height is taken. */
  readonly floorTaken: boolean;
}

/** From linings, ceiling and floor where they are recorded, else from the outside of the shell. */
export function layerPlanes(model: Model): LayerPlanes {
  const { low, high } = shellExtent(model);
  const inside = (side: Side, axis: 0 | 1 | 2): readonly number[] =>
    model.shell.panels.flatMap((panel) => {
      const surface = panelSurfaces(model).get(panel.id);
      return surface?.side === side && surface.seenFrom === 'inside' && panel.panelKind !== 'access'
        ? panel.outline.map((corner) => corner[axis])
        : [];
    });
  const least = (side: Side, axis: 0 | 1 | 2, without: number): number => {
    const found = inside(side, axis);
    return found.length === 0 ? without : Math.min(...found) - IN_SHEET_MM;
  };
  const most = (side: Side, axis: 0 | 1 | 2, without: number): number => {
    const found = inside(side, axis);
    return found.length === 0 ? without : Math.max(...found) + IN_SHEET_MM;
  };
  const floorMm = floorMmOf(model);
  return {
    floorMm: floorMm ?? low[2] + IN_FLOOR_MM,
    ceilingMm: least('ceiling', 2, high[2] - IN_ROOF_MM),
    leftMm: most('left', 1, low[1] + IN_WALL_MM),
    rightMm: least('right', 1, high[1] - IN_WALL_MM),
    frontMm: most('front', 0, low[0] + IN_WALL_MM),
    rearMm: least('rear', 0, high[0] - IN_WALL_MM),
    floorTaken: floorMm === undefined,
  };
}

/** The layer of a place: belly and ceiling before the walls, which stand between them. */
export function layerOf([x, y, z]: Vec3, planes: LayerPlanes): ServiceLayer {
  if (z < planes.floorMm) return 'belly';
  if (z >= planes.ceilingMm) return 'ceiling';
  if (y <= planes.leftMm) return 'left';
  if (y >= planes.rightMm) return 'right';
  if (x >= planes.rearMm) return 'rear';
  return x <= planes.frontMm ? 'front' : 'floor';
}

/** A stretch of a path within one layer; `from` and `to` say where it goes on, absent at the ends of the path. */
export interface LayerPiece {
  readonly layer: ServiceLayer;
  readonly points: readonly Vec3[];
  readonly from?: ServiceLayer;
  readonly to?: ServiceLayer;
}

/** A path cut where it passes from one layer into another. */
export function layerPieces(path: readonly Vec3[], planes: LayerPlanes): readonly LayerPiece[] {
  const pieces: { layer: ServiceLayer; points: Vec3[] }[] = [];
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1] as Vec3, path[i] as Vec3];
    const cuts = [0, ...crossings(a, b, planes), 1];
    for (let k = 1; k < cuts.length; k++) {
      const [from, to] = [cuts[k - 1] as number, cuts[k] as number];
      const layer = layerOf(lerp(a, b, (from + to) / 2), planes);
      const open = pieces.at(-1);
      if (open?.layer === layer) open.points.push(lerp(a, b, to));
      else pieces.push({ layer, points: [lerp(a, b, from), lerp(a, b, to)] });
    }
  }
  return pieces.map((piece, at) => {
    const [before, after] = [pieces[at - 1]?.layer, pieces[at + 1]?.layer];
    return { ...piece, ...(before ? { from: before } : {}), ...(after ? { to: after } : {}) };
  });
}

/** Shares of the way from one place to another at which a plane is crossed, in order. */
function crossings(a: Vec3, b: Vec3, planes: LayerPlanes): readonly number[] {
  const at = (axis: 0 | 1 | 2, planeMm: number): readonly number[] => {
    const share = (planeMm - a[axis]) / (b[axis] - a[axis]);
    return share > 0 && share < 1 ? [share] : [];
  };
  return [
    ...at(2, planes.floorMm),
    ...at(2, planes.ceilingMm),
    ...at(1, planes.leftMm),
    ...at(1, planes.rightMm),
    ...at(0, planes.frontMm),
    ...at(0, planes.rearMm),
  ].sort((p, q) => p - q);
}
