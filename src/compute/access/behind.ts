import { type Bounds, type Box, boundsOf, boxBounds, grow, nearestInBox, overlap } from '../../geometry/box.js';
import { facet, nearestOnFacet } from '../../geometry/facet.js';
import { grid } from '../../geometry/grid.js';
import { distance, lerp, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import { memberBox } from '../solids.js';
import type { Obstacles } from './obstacles.js';
import { depthBehind, nearestOfOpening, type PanelOpening } from './opening.js';
import { REACH_MM } from './reach.js';
import { reachThrough } from './sight.js';
import type { BehindItem } from './types.js';
import { componentBox } from './walls.js';
import { zoneBoxes } from './zones.js';

/** Something that may stand behind a panel: how to find its place nearest to a point. */
interface Body {
  readonly id: string;
  readonly kind: BehindItem['kind'];
  readonly bounds: Bounds;
  /** The place of it nearest to the opening, on the inner side; undefined where all of it is outside. */
  nearest(opening: PanelOpening): Vec3 | undefined;
}

/** Half a millimetre of rounding at the panel's plane. */
const PLANE_MM = 0.5;
const CELL_MM = 500;

/** What is within an arm's length behind each opening, nearest first. */
export function behind(
  model: Model,
  openings: readonly PanelOpening[],
  obstacles: Obstacles,
): Readonly<Record<string, readonly BehindItem[]>> {
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
  if (distance(nearest, nearestOfOpening(nearest, opening)) > REACH_MM.arm) return [];
  const { distanceMm, reach, blockedBy } = reachThrough(opening, nearest, obstacles, { ignore: body.id });
  return [{ id: body.id, kind: body.kind, distanceMm, reach, blockedBy, nearest }];
}

function bodies({ shell, library }: Model): readonly Body[] {
  return [
    ...shell.nodes.map((node): Body => pointBody('node', node.id, node.at)),
    ...shell.runs.filter((run) => run.path.length > 0).map((run): Body => pathBody(run.id, run.path)),
    ...shell.members.flatMap((member) => {
      if (member.shape.kind === 'plate') return sheetBody(member.id, member.shape.outline);
      const section = library.sections.get(member.shape.section);
      return section ? [boxBody('member', member.id, [memberBox(member.shape, section.dimensions)])] : [];
    }),
    ...shell.components.map((component): Body => {
      const box = componentBox(component);
      return box ? boxBody('component', component.id, [box]) : pointBody('component', component.id, component.at);
    }),
    ...shell.zones.flatMap((zone) => {
      const boxes = zoneBoxes(zone);
      return boxes.length > 0 ? [boxBody('zone', zone.id, boxes)] : [];
    }),
  ];
}

const pointBody = (kind: Body['kind'], id: string, at: Vec3): Body => ({
  id,
  kind,
  bounds: { min: at, max: at },
  nearest: () => at,
});

const pathBody = (id: string, path: readonly Vec3[]): Body => ({
  id,
  kind: 'run',
  bounds: boundsOf(path),
  nearest: (opening) =>
    nearestOfAll(
      opening,
      path.slice(1).map((to, i) => nearestOnStretch(opening, path[i] as Vec3, to)),
    ),
});

const boxBody = (kind: Body['kind'], id: string, boxes: readonly Box[]): Body => {
  const bounds = boxes.map(boxBounds);
  return {
    id,
    kind,
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
    const away = distance(at, nearestOfOpening(at, opening));
    if (away < least) {
      least = away;
      best = at;
    }
  }
  return best;
}

/** The nearest place of one stretch that lies inside the panel: the distance along it is convex, so thirds close in on the least. */
function nearestOnStretch(opening: PanelOpening, from: Vec3, to: Vec3): Vec3 | undefined {
  const start = depthBehind(from, opening);
  const end = depthBehind(to, opening);
  if (start < 0 && end < 0) return undefined;
  let low = start < 0 ? start / (start - end) : 0;
  let high = end < 0 ? start / (start - end) : 1;
  const away = (t: number): number => {
    const at = lerp(from, to, t);
    return distance(at, nearestOfOpening(at, opening));
  };
  for (let i = 0; i < 40; i++) {
    const third = (high - low) / 3;
    if (away(low + third) <= away(high - third)) high -= third;
    else low += third;
  }
  return lerp(from, to, (low + high) / 2);
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
