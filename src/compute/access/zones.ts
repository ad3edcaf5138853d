import type { Box } from '../../geometry/box.js';
import { boxBetween, boxBounds, grow, isInBox } from '../../geometry/box.js';
import { grid } from '../../geometry/grid.js';
import { cross, distance, lerp, scale, subtract, unit, type Vec3 } from '../../geometry/vector.js';
import type { Zone } from '../../records/index.js';

/**
 * The boxes that a zone fills: its own box, or one for each stretch of its line. Across is level, up is at right angles to the
 * line and to across; on a line that stands upright, across is along y and up along x.
 * At a bend the boxes are not mitred: each ends square at the corner.
 */
export function zoneBoxes(zone: Zone): readonly Box[] {
  if (zone.box) return [boxBetween(zone.box[0], zone.box[1])];
  const line = zone.along;
  if (!line || !zone.clearMm) return [];
  const [acrossMm, upMm] = zone.clearMm;
  return line.slice(1).flatMap((to, i) => {
    const from = line[i] as Vec3;
    const length = distance(from, to);
    if (length === 0) return [];
    const along = unit(subtract(to, from));
    const level = cross([0, 0, 1], along);
    const across: Vec3 = Math.hypot(...level) < 1e-3 ? [0, 1, 0] : unit(level);
    const up = unit(cross(along, across));
    return [
      { center: lerp(from, to, 0.5), axes: [along, unit(cross(up, along)), up], half: [length / 2, acrossMm / 2, upMm / 2] },
    ] satisfies readonly Box[];
  });
}

/** Clear area square to the way of a zone, mm²: of a box, the two smaller sizes; undefined where nothing is recorded. */
export function zoneClearMm2(zone: Zone): number | undefined {
  if (zone.clearMm) return zone.clearMm[0] * zone.clearMm[1];
  if (!zone.box) return undefined;
  const [from, to] = zone.box;
  const sizes = scale(subtract(to, from), 1)
    .map(Math.abs)
    .sort((a, b) => a - b);
  return (sizes[0] as number) * (sizes[1] as number);
}

/** Half a millimetre for rounding of inches: a place on the boundary is inside. */
export const BOUNDARY_MM = 0.5;

const CELL_MM = 500;

/** Zones with their boxes, ready to be asked what holds a place. */
export interface ZoneMap {
  holding(point: Vec3, slackMm?: number): readonly Zone[];
  /** Whether any does. */
  holds(point: Vec3): boolean;
  readonly boxes: ReadonlyMap<string, readonly Box[]>;
}

export function zoneMap(zones: readonly Zone[]): ZoneMap {
  const boxes = new Map(zones.map((zone) => [zone.id, zoneBoxes(zone)] as const));
  const all = zones.flatMap((zone, i) => (boxes.get(zone.id) ?? []).map((box) => ({ zone: i, box })));
  const index = grid(
    all.map(({ box }, i) => ({ index: i, bounds: boxBounds(box) })),
    CELL_MM,
  );
  return {
    boxes,
    holds(point) {
      const seen = (i: number): boolean => isInBox(point, (all[i] as { readonly box: Box }).box, BOUNDARY_MM);
      return index.visit(grow({ min: point, max: point }, 2 * BOUNDARY_MM), seen);
    },
    holding(point, slackMm = 0) {
      const slack = BOUNDARY_MM + slackMm;
      const held: number[] = [];
      // A box turned against the datum stands out of its bounds by a corner of the slack.
      index.visit(grow({ min: point, max: point }, 2 * slack), (i) => {
        const { zone, box } = all[i] as { readonly zone: number; readonly box: Box };
        if (isInBox(point, box, slack) && !held.includes(zone)) held.push(zone);
        return false;
      });
      return held.sort((a, b) => a - b).map((i) => zones[i] as Zone);
    },
  };
}
