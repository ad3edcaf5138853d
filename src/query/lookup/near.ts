import { solids } from '../../compute/access/standing.js';
import { lineWalls } from '../../compute/access/walls.js';
import { zoneBoxes } from '../../compute/access/zones.js';
import type { Computed } from '../../compute/figures.js';
import { type Bounds, type Box, boundsOf, grow, nearestInBox, overlap } from '../../geometry/box.js';
import { facet, height, nearestOnFacet } from '../../geometry/facet.js';
import { nearestOnPolyline } from '../../geometry/segment.js';
import { add, distance, lerp, scale, subtract, type Vec3 } from '../../geometry/vector.js';
import type { Member, SectionShape } from '../../records/index.js';
import { metalBounds } from '../metal-bounds.js';
import type { NearHit, NearKind } from './types.js';

/**
 * Every run, node, member, panel, component and zone whose outside comes within a distance of a point, nearest first: what a drill
 * there would meet; tanks, bays and chassis rails too. Tubes count by their walls. Exact but for rounded corners. A place that is known to
 * `uncertaintyMm` only is asked so much further about. All lengths in mm.
 */
export function near({ model, figures }: Computed, point: Vec3, withinMm: number, uncertaintyMm = 0): readonly NearHit[] {
  const { shell, library } = model;
  // What lies farther off by its bounds alone is not looked at more closely.
  const about = grow({ min: point, max: point }, withinMm + uncertaintyMm);
  const comesNear = (bounds: Bounds | undefined): boolean => bounds !== undefined && overlap(bounds, about);
  const metal = metalBounds(model);
  const outside = new Map(figures.takeOff.runs.map((run) => [run.id, run.outsideDiameterMm] as const));
  const tolerances = new Map(shell.components.map(({ id, toleranceMm }) => [id, toleranceMm] as const));
  const hits: NearHit[] = [];
  const keep = (id: string, kind: NearKind, nearest: Vec3 | undefined, toleranceMm?: number): void => {
    if (!nearest) return;
    const distanceMm = distance(point, nearest);
    if (distanceMm <= withinMm + uncertaintyMm) hits.push({ id, kind, distanceMm, nearest, toleranceMm });
  };
  for (const run of shell.runs) {
    const radiusMm = (outside.get(run.id) ?? 0) / 2;
    if (run.path.length === 0 || !comesNear(grow(boundsOf(run.path), radiusMm))) continue;
    const axis = nearestOnPolyline(point, run.path);
    if (axis) keep(run.id, 'run', onTube(point, axis.at, radiusMm), run.toleranceMm);
  }
  for (const node of shell.nodes) keep(node.id, 'node', node.at, node.toleranceMm);
  for (const member of shell.members) {
    if (!comesNear(metal.get(member.id))) continue;
    if (member.shape.kind === 'plate')
      keep(member.id, 'member', onPlate(point, member.shape.outline, [], member.shape.thicknessMm));
    else {
      const section = library.sections.get(member.shape.section);
      if (section) keep(member.id, 'member', onBoxes(point, wallsOf(member, section.dimensions)));
    }
  }
  for (const panel of shell.panels) {
    const { id, outline, holes, thicknessMm = 0 } = panel;
    if (comesNear(grow(boundsOf(outline), thicknessMm))) keep(id, 'panel', onPlate(point, outline, holes, thicknessMm));
  }
  for (const component of shell.components) {
    if (!component.sizeMm) keep(component.id, 'component', component.at, component.toleranceMm);
  }
  for (const { id, kind, box } of solids(model)) keep(id, kind, nearestInBox(point, box), tolerances.get(id));
  for (const zone of shell.zones) keep(zone.id, 'zone', onBoxes(point, zoneBoxes(zone)));
  return hits.sort((a, b) => a.distanceMm - b.distanceMm || (a.id < b.id ? -1 : 1));
}

/** Made once a member: a page asks for place after place. */
const WALLS = new WeakMap<Member, readonly Box[]>();

function wallsOf(member: Member, dimensions: SectionShape): readonly Box[] {
  const known = WALLS.get(member);
  if (known) return known;
  const walls = lineWalls(member, dimensions);
  WALLS.set(member, walls);
  return walls;
}

/** The place on the outside of a wire or pipe about an axis point; the point itself where it lies inside. */
function onTube(point: Vec3, axis: Vec3, radiusMm: number): Vec3 {
  const away = distance(point, axis);
  return away <= radiusMm ? point : lerp(axis, point, radiusMm / away);
}

/** The place of a flat plate of some thickness about its outline; the point itself where it lies inside. */
function onPlate(
  point: Vec3,
  outline: readonly Vec3[],
  holes: readonly (readonly Vec3[])[],
  thicknessMm: number,
): Vec3 | undefined {
  const sheet = facet(outline, holes);
  if (!sheet) return undefined;
  const over = height(point, sheet);
  const half = thicknessMm / 2;
  const middle = nearestOnFacet(subtract(point, scale(sheet.normal, over)), sheet);
  return add(middle, scale(sheet.normal, Math.min(half, Math.max(-half, over))));
}

function onBoxes(point: Vec3, boxes: readonly Box[]): Vec3 | undefined {
  let best: Vec3 | undefined;
  let least = Infinity;
  for (const box of boxes) {
    const at = nearestInBox(point, box);
    const away = distance(point, at);
    if (away < least) {
      least = away;
      best = at;
    }
  }
  return best;
}
