import { type Bounds, type Box, boundsOf, boxBounds, grow, nearestInBox, overlap } from '../../geometry/box.js';
import { facet, nearestOnFacet } from '../../geometry/facet.js';
import { grid } from '../../geometry/grid.js';
import { segmentToBox } from '../../geometry/segment-box.js';
import { distance, lerp, type Vec3 } from '../../geometry/vector.js';
import { placedNodes } from '../../model/placed.js';
import type { Model } from '../../model/shell.js';
import { memberBoxes } from '../solids.js';
import type { Obstacles } from './obstacles.js';
import { depthBehind, distanceFromOpening, nearestOfOpening, type PanelOpening } from './opening.js';
import { REACH_MM } from './reach.js';
import { FEW_ENTRIES, reachThrough } from './sight.js';
import { solids } from './standing.js';
import type { BehindItem } from './types.js';
import { zoneBoxes } from './zones.js';

/** Something that may stand behind a panel: how to find its place nearest to a point. */
interface Body {
  readonly id: string;
  readonly kind: BehindItem['kind'];
  readonly bounds: Bounds;
  readonly toleranceMm?: number | undefined;
  /** The place of it nearest to the opening, on the inner side; undefined where all of it is outside. */
  nearest(opening: PanelOpening): Vec3 | undefined;
}

/** Half a millimetre of rounding at the panel's plane. */
const PLANE_MM = 0.5;
const CELL_MM = 500;

/** What is within an arm's length behind each opening, nearest first. */
export function behindPanel(
  model: Model,
  openings: readonly PanelOpening[],
  obstacles: Obstacles,
): Readonly<Record<string, readonly BehindItem[]>> {
  if (openings.length === 0) return {};
  const all = bodies(model);
  const index = grid(
    all.map((body, i) => ({ index: i, bounds: body.bounds })),
    CELL_MM,
  );
  return Object.fromEntries(
    openings.map((opening) => {
      const bounds = grow(opening.bounds, REACH_MM.arm);
      const items = index
        .near(bounds)
        .map((i) => all[i] as Body)
        .filter((body) => overlap(bounds, body.bounds))
        .flatMap((body) => item(body, opening, obstacles));
      return [opening.panel.id, items.sort((a, b) => a.distanceMm - b.distanceMm || (a.id < b.id ? -1 : 1))];
    }),
  );
}

function item(body: Body, opening: PanelOpening, obstacles: Obstacles): readonly BehindItem[] {
  const nearest = body.nearest(opening);
  if (!nearest || depthBehind(nearest, opening) < -PLANE_MM) return [];
  if (distanceFromOpening(nearest, opening) > REACH_MM.arm) return [];
  const { id, kind, toleranceMm } = body;
  const entries = kind === 'node' || kind === 'component' ? undefined : FEW_ENTRIES;
  const { distanceMm, reach, blockedBy, tool, twoHands, approach } = reachThrough(opening, nearest, obstacles, {
    ignore: id,
    toleranceMm,
    entries,
  });
  return [{ id, kind, nearest, distanceMm, reach, blockedBy, toleranceMm, tool, twoHands, approach }];
}

function bodies(model: Model): readonly Body[] {
  const { shell, library } = model;
  const tolerance = new Map(shell.components.map(({ id, toleranceMm }) => [id, toleranceMm] as const));
  return [
    ...placedNodes(shell.nodes).map((node): Body => pointBody('node', node)),
    ...shell.runs.filter((run) => run.path.length > 0).map((run): Body => pathBody(run)),
    ...shell.members.flatMap((member) => {
      if (member.shape.kind === 'plate') return sheetBody(member.id, member.shape.outline);
      const section = library.sections.get(member.shape.section);
      return section ? [boxBody('member', member, memberBoxes(member.shape, section.dimensions))] : [];
    }),
    ...shell.components.filter(({ sizeMm }) => !sizeMm).map((component): Body => pointBody('component', component)),
    ...solids(model).map(({ id, kind, box }): Body => boxBody(kind, { id, ...known(tolerance.get(id)) }, [box])),
    ...shell.zones.flatMap((zone) => {
      const boxes = zoneBoxes(zone);
      return boxes.length > 0 ? [boxBody('zone', zone, boxes)] : [];
    }),
  ];
}

const known = (toleranceMm: number | undefined) => (toleranceMm === undefined ? {} : { toleranceMm });

/** A record by its id, and how well its place is known where that is recorded. */
interface Placed {
  readonly id: string;
  readonly toleranceMm?: number;
}

const pointBody = (kind: Body['kind'], { id, at, toleranceMm }: Placed & { readonly at: Vec3 }): Body => ({
  id,
  kind,
  toleranceMm,
  bounds: { min: at, max: at },
  nearest: () => at,
});

const pathBody = ({ id, path, toleranceMm }: Placed & { readonly path: readonly Vec3[] }): Body => ({
  id,
  kind: 'run',
  toleranceMm,
  bounds: boundsOf(path),
  nearest: (opening) =>
    nearestOfAll(
      opening,
      path.slice(1).map((to, i) => nearestOnStretch(opening, path[i] as Vec3, to)),
    ),
});

const boxBody = (kind: Body['kind'], { id, toleranceMm }: Placed, boxes: readonly Box[]): Body => {
  const bounds = boxes.map(boxBounds);
  return {
    id,
    kind,
    toleranceMm,
    bounds: boundsOf(bounds.flatMap((one) => [one.min, one.max])),
    nearest: (opening) =>
      nearestOfAll(
        opening,
        boxes.map((box) => meet(opening, (point) => nearestInBox(point, box))),
      ),
  };
};

function sheetBody(id: string, outline: readonly Vec3[]): readonly Body[] {
  const sheet = facet(outline);
  if (!sheet) return [];
  const nearest: Body['nearest'] = (opening) => meet(opening, (point) => nearestOnFacet(point, sheet));
  return [{ id, kind: 'member', bounds: boundsOf(outline), nearest }];
}

function nearestOfAll(opening: PanelOpening, places: readonly (Vec3 | undefined)[]): Vec3 | undefined {
  let best: Vec3 | undefined;
  let least = Infinity;
  for (const at of places) {
    if (!at || depthBehind(at, opening) < -PLANE_MM) continue;
    const away = distanceFromOpening(at, opening);
    if (away < least) {
      least = away;
      best = at;
    }
  }
  return best;
}

/** The nearest place of one stretch that lies inside the panel. */
function nearestOnStretch(opening: PanelOpening, from: Vec3, to: Vec3): Vec3 | undefined {
  const start = depthBehind(from, opening);
  const end = depthBehind(to, opening);
  if (start < 0 && end < 0) return undefined;
  const [low, high] = [
    start < 0 ? lerp(from, to, start / (start - end)) : from,
    end < 0 ? lerp(from, to, start / (start - end)) : to,
  ];
  const flat: Box = { center: opening.center, axes: [opening.u, opening.v, opening.inward], half: [...opening.half, 0] };
  return lerp(low, high, segmentToBox(low, high, flat).t);
}

/** Where a convex body comes nearest to the opening: projections in turn close in on it (Cheney and Goldstein 1959). */
function meet(opening: PanelOpening, project: (point: Vec3) => Vec3): Vec3 {
  let at = project(opening.center);
  for (let i = 0; i < 60; i++) {
    const next = project(nearestOfOpening(at, opening));
    if (distance(next, at) < 1e-3) return next;
    at = next;
  }
  return at;
}
