import { type Bounds, boundsOf } from '../../geometry/box.js';
import { facet } from '../../geometry/facet.js';
import { type Grid, grid } from '../../geometry/grid.js';
import { add, distance, dot, scale, subtract, type Vec3 } from '../../geometry/vector.js';
import { OUTWARD, type Panel } from '../../records/index.js';
import { type Admits, admits, HAND_RADIUS_MM } from './reach.js';
import type { Surface } from './surfaces.js';
import type { Approach } from './types.js';

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
  /** How far from its rim the middle of a flat hand goes in, along the longer side and across. */
  readonly inset: readonly [number, number];
  /** Nine places spread over it where a hand may go in; of an opening that something stands before, those that are left. */
  readonly spread: readonly Vec3[];
  /** True where something stands before a part of it: then a hand goes in at the places of `spread` only. */
  readonly partly?: boolean;
  /** What stands before it; absent where nobody has looked. */
  readonly approach?: Approach;
  /** Sentences on what was not recorded and had to be taken. */
  readonly assumed: readonly string[];
}

/** A rim of this width is taken off the outline where the clear opening is not recorded, mm. House rule. */
const RIM_MM = 25;

/** Undefined where the outline has no area. `middle` is the middle of the shell: the inner side of a panel that says nothing else. */
export function panelOpening(panel: Panel, parent: Panel | undefined, middle: Vec3, surface?: Surface): PanelOpening | undefined {
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
  const known = panel.facing ?? surface?.faces;
  const outward = known ? OUTWARD[known] : outwardOf(panel, parent, flat.center, middle);
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
  ).map(([a, b]) => placePanel(opening, a * half[0], b * half[1]));
  const inset = half.map((one) => Math.min(one, HAND_RADIUS_MM)) as [number, number];
  const [a, b] = [half[0] - inset[0], half[1] - inset[1]];
  const spread = [0, -a, a].flatMap((along) => [0, -b, b].map((across) => placePanel(opening, along, across)));
  const rest = { admits: admits([longMm, shortMm]), bounds: boundsOf(corners), assumed };
  return { panel, ...opening, inward, half, inset, spread, ...rest };
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
function placePanel(opening: Pick<PanelOpening, 'center' | 'u' | 'v'>, along: number, across: number): Vec3 {
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
export const nearestOfOpening = (point: Vec3, opening: PanelOpening): Vec3 => clampedFoot(point, opening, opening.half);

/** Where the middle of a hand goes in that takes the shortest way to a point: half a hand clear of the rim. */
export const entryTowards = (point: Vec3, opening: PanelOpening): Vec3 =>
  opening.partly
    ? (spreadTowards(point, opening, 1)[0] ?? opening.center)
    : clampedFoot(point, opening, [opening.half[0] - opening.inset[0], opening.half[1] - opening.inset[1]]);

function clampedFoot(point: Vec3, opening: PanelOpening, half: readonly [number, number]): Vec3 {
  const [along, across] = footOn(opening, point);
  return placePanel(opening, clamp(along, half[0]), clamp(across, half[1]));
}

const clamp = (value: number, half: number): number => Math.min(half, Math.max(-half, value));

/** Distance of a point from the opening, mm. Exact. */
export function distanceFromOpening(point: Vec3, { center, u, v, inward, half }: PanelOpening): number {
  const x = point[0] - center[0];
  const y = point[1] - center[1];
  const z = point[2] - center[2];
  const along = Math.max(0, Math.abs(x * u[0] + y * u[1] + z * u[2]) - half[0]);
  const across = Math.max(0, Math.abs(x * v[0] + y * v[1] + z * v[2]) - half[1]);
  const deep = x * inward[0] + y * inward[1] + z * inward[2];
  return Math.sqrt(along * along + across * across + deep * deep);
}

/** True where a point's foot on the panel's plane lies in the opening, or at most `slack` beside it. */
export function isOverOpening(point: Vec3, opening: PanelOpening, slack: number): boolean {
  const [along, across] = footOn(opening, point);
  return Math.abs(along) <= opening.half[0] + slack && Math.abs(across) <= opening.half[1] + slack;
}

/** Of the nine places where a hand may go in, those nearest to a point, nearest first. */
export function spreadTowards(point: Vec3, { spread }: PanelOpening, most: number): readonly Vec3[] {
  const nearest: Vec3[] = [];
  for (let i = 0; i < spread.length; i++) away[i] = distance(point, spread[i] as Vec3);
  while (nearest.length < most && nearest.length < spread.length) {
    let best = 0;
    for (let i = 1; i < spread.length; i++) if ((away[i] as number) < (away[best] as number)) best = i;
    nearest.push(spread[best] as Vec3);
    away[best] = Infinity;
  }
  return nearest;
}
/** Kept from call to call: this is asked many hundred thousand times. */
const away = new Float64Array(9);

/** True where a point lies inside the panel (to a millimetre) and no further than `withinMm` from its opening. */
export const isBehind = (point: Vec3, opening: PanelOpening, withinMm: number): boolean =>
  depthBehind(point, opening) >= -1 && distanceFromOpening(point, opening) <= withinMm;

/** Places to be asked which of them lie near an opening. */
export const pointGrid = (places: readonly Vec3[]): Grid =>
  grid(
    places.map((at, i) => ({ index: i, bounds: { min: at, max: at } })),
    POINT_CELL_MM,
  );
const POINT_CELL_MM = 300;
