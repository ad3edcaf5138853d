import { type Bounds, boundsOf } from '../../geometry/box.js';
import { facet } from '../../geometry/facet.js';
import { add, dot, scale, subtract, type Vec3 } from '../../geometry/vector.js';
import { OUTWARD, type Panel } from '../../model/structure.js';
import { type Admits, admits } from './reach.js';

/** The clear hole of an access panel, taken off: a rectangle about the middle of its outline. */
export interface PanelOpening {
  readonly panel: Panel;
  readonly center: Vec3;
  /** Along the longer side, across it, and into the coach. Unit vectors. */
  readonly u: Vec3;
  readonly v: Vec3;
  readonly inward: Vec3;
  readonly half: readonly [number, number];
  readonly admits: Admits;
  readonly bounds: Bounds;
  /** Nine places spread over it. */
  readonly spread: readonly Vec3[];
  /** Sentences on what was not recorded and had to be taken. */
  readonly assumed: readonly string[];
}

/** A rim of this width is taken off the outline where the clear opening is not recorded, mm. House rule. */
const RIM_MM = 25;

/** Undefined where the outline has no area. `middle` is the middle of the shell: the inner side of a panel that says nothing else. */
export function panelOpening(panel: Panel, parent: Panel | undefined, middle: Vec3): PanelOpening | undefined {
  const flat = facet(panel.outline);
  if (!flat) return undefined;
  const assumed: string[] = [];
  const sizes = [0, 1].map((k) => {
    const values = flat.outline.map((corner) => corner[k as 0 | 1]);
    return Math.max(...values) - Math.min(...values);
  });
  let [longMm, shortMm] = [Math.max(...(panel.openingMm ?? [0, 0])), Math.min(...(panel.openingMm ?? [0, 0]))];
  if (!panel.openingMm) {
    [longMm, shortMm] = sizes.map((size) => Math.max(0, size - 2 * RIM_MM)) as [number, number];
    assumed.push(`${panel.id}: no clear opening recorded; its outline less ${RIM_MM} mm all round was taken`);
  }
  if (!panel.facing) {
    assumed.push(
      `${panel.id}: no facing recorded; ${parent ? `taken from ${parent.id}` : 'taken as away from the middle of the shell'}`,
    );
  }
  const outward = outwardOf(panel, parent, flat.center, middle);
  const inward = scale(flat.normal, dot(flat.normal, outward) > 0 ? -1 : 1);
  const half = [longMm / 2, shortMm / 2] as const;
  const opening = { center: flat.center, u: flat.u, v: flat.v };
  const corners = (
    [
      [1, 1],
      [1, -1],
      [-1, -1],
      [-1, 1],
    ] as const
  ).map(([a, b]) => place(opening, a * half[0], b * half[1]));
  const spread = [0, -0.8, 0.8].flatMap((a) => [0, -0.8, 0.8].map((b) => place(opening, a * half[0], b * half[1])));
  return { panel, ...opening, inward, half, spread, admits: admits([longMm, shortMm]), bounds: boundsOf(corners), assumed };
}

function outwardOf(panel: Panel, parent: Panel | undefined, at: Vec3, middle: Vec3): Vec3 {
  const facing = panel.facing ?? parent?.facing;
  if (facing) return OUTWARD[facing];
  if (parent?.panelKind === 'belly') return OUTWARD.down;
  if (parent?.panelKind === 'roof') return OUTWARD.up;
  const away = subtract(at, middle);
  // Whoever opens an interior panel stands in the room.
  return parent?.panelKind === 'interior' ? scale(away, -1) : away;
}

/** A place of the opening's plane, mm along its longer side and across. */
export function place(opening: Pick<PanelOpening, 'center' | 'u' | 'v'>, along: number, across: number): Vec3 {
  return add(opening.center, add(scale(opening.u, along), scale(opening.v, across)));
}

/** Where a point's foot on the panel's plane lies, mm along the opening's longer side and across, from its middle. */
function footOn(opening: PanelOpening, point: Vec3): readonly [number, number] {
  const from = subtract(point, opening.center);
  return [dot(from, opening.u), dot(from, opening.v)];
}

/** How far inside the panel a point lies, mm; negative outside. */
export const depthBehind = (point: Vec3, opening: PanelOpening): number => dot(subtract(point, opening.center), opening.inward);

/** The place of the opening nearest to a point. Exact. */
export function nearestOfOpening(point: Vec3, opening: PanelOpening): Vec3 {
  const [along, across] = footOn(opening, point);
  const clamp = (value: number, half: number): number => Math.min(half, Math.max(-half, value));
  return place(opening, clamp(along, opening.half[0]), clamp(across, opening.half[1]));
}

/** True where a point's foot on the panel's plane lies in the opening, or at most `slack` beside it. */
export function isOverOpening(point: Vec3, opening: PanelOpening, slack: number): boolean {
  const [along, across] = footOn(opening, point);
  return Math.abs(along) <= opening.half[0] + slack && Math.abs(across) <= opening.half[1] + slack;
}

/** Where a hand may start: the place nearest to the target, then of nine places over the opening the nearest; `most` in all. */
export function startsTowards(point: Vec3, opening: PanelOpening, most: number): readonly Vec3[] {
  const square = (start: Vec3): number => {
    const way = subtract(point, start);
    return dot(way, way);
  };
  const spread = opening.spread.map((start) => ({ start, away: square(start) })).sort((a, b) => a.away - b.away);
  return [nearestOfOpening(point, opening), ...spread.slice(0, most - 1).map(({ start }) => start)];
}
