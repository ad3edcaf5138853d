import { type Bounds, boundsOf, boxBounds, overlap } from '../../geometry/box.js';
import { add, cross, scale, type Vec3 } from '../../geometry/vector.js';
import type { Model } from '../../model/shell.js';
import type { Panel } from '../../records/index.js';
import type { HandWay, Obstacles } from './obstacles.js';
import type { PanelOpening } from './opening.js';
import { FINGER_MM, HAND_RADIUS_MM, REACH_MM } from './reach.js';
import { type Solid, solids } from './standing.js';
import { type Surface, surfaces } from './surfaces.js';
import type { Approach } from './types.js';

/**
 * Clear way that an arm needs before an opening, mm: hand and forearm of a small woman, straight or slanting, since the elbow bends
 * no sooner. ANSUR II (RCH-A02).
 */
const FOREARM_MM = REACH_MM.forearm;
/** Slants that are tried beside the straight way, each to eight sides, radians from straight out. */
const SLANTS = [Math.PI / 6, Math.PI / 3];
/**
 * Room that a person takes, mm: across, and up from what they lie or stand on. Lying: MIL-STD-1472, supine work space, 510 high and 610
 * wide, unverified citation. Standing: a passage that is gone through sideways, and a small woman's shoulder height; unverified citation.
 */
const LYING = { acrossMm: 610, highMm: 510 } as const;
const STANDING = { acrossMm: 330, highMm: 1300 } as const;
/** Middles of the places that are tried, from straight before the opening, mm: those from which an arm still gets there. */
const ASIDE_MM = [0, 300, -300, 550, -550, 750, -750];

/** Gives each opening what stands before it; where something stands before a part of it, only the rest of it counts. */
export function approached(model: Model, openings: readonly PanelOpening[], obstacles: Obstacles): readonly PanelOpening[] {
  const look = lookAround(model);
  return openings.map((opening) => withApproach(opening, obstacles, look));
}

interface Around {
  readonly solids: readonly { readonly solid: Solid; readonly bounds: Bounds }[];
  readonly riders: ReadonlyMap<string, string>;
  readonly removable: ReadonlySet<string>;
  readonly surfaces: ReadonlyMap<string, Surface>;
  /** Height of the ground and of the floor, mm; absent where neither can be known. */
  readonly groundMm?: number;
  readonly floorMm?: number;
  /** What linings, floor and ceiling close in. */
  readonly room?: Bounds;
}

function lookAround(model: Model): Around {
  const all = solids(model);
  const { railTopAboveGroundMm } = model.shell.chassis.frame;
  const floorMm = floorHeight(model);
  const inside = model.shell.panels.filter(({ id }) => surfaces(model).get(id)?.seenFrom === 'inside');
  return {
    solids: all.map((solid) => ({ solid, bounds: boxBounds(solid.box) })),
    riders: new Map(all.flatMap(({ id, ridesOn }) => (ridesOn === undefined ? [] : [[id, ridesOn] as const]))),
    removable: new Set(model.shell.panels.filter(comesOff).map(({ id }) => id)),
    surfaces: surfaces(model),
    ...(railTopAboveGroundMm === undefined ? {} : { groundMm: -railTopAboveGroundMm }),
    ...(floorMm === undefined ? {} : { floorMm }),
    ...(inside.length === 0 ? {} : { room: boundsOf(inside.flatMap(({ outline }) => outline)) }),
  };
}

/** Where one stands inside, mm in the datum: on the highest floor sheet, else at the lowest door's sill; undefined without either. */
export function floorHeight(model: Model): number | undefined {
  const sheets = model.shell.panels.filter(({ id }) => surfaces(model).get(id)?.side === 'floor');
  if (sheets.length > 0) {
    return Math.max(...sheets.map(({ outline, thicknessMm = 0 }) => Math.max(...outline.map((at) => at[2])) + thicknessMm / 2));
  }
  // A sill at the lowest edge of the linings is a floor; a window's is not.
  const sills = model.shell.openings.flatMap(({ sill }) => sill.map((at) => at[2]));
  return sills.length > 0 ? Math.min(...sills) : undefined;
}

/** Of the list of fixing methods. */
const COMES_OFF: readonly string[] = ['screws', 'bolts', 'clips', 'hinged'];

/** Held by fasteners that are undone again: not glued, welded or riveted. */
function comesOff({ panelKind, fixing }: Panel): boolean {
  if (panelKind === 'access') return true;
  return fixing !== undefined && fixing.adhesive === undefined && COMES_OFF.includes(fixing.method);
}

type Found = Pick<Approach, 'blockedBy' | 'removeFirst' | 'moveFirst'>;
const CLEAR: Found = { blockedBy: [], removeFirst: [], moveFirst: [] };

function withApproach(opening: PanelOpening, obstacles: Obstacles, look: Around): PanelOpening {
  const surface = look.surfaces.get(opening.panel.id) as Surface;
  const from = comesFrom(surface);
  const ways = opening.spread.map((entry) => armFrom(entry, opening, obstacles, look));
  const least = Math.min(...ways.map(hardness));
  const best = ways.find((one) => hardness(one) === least) as Found;
  const kept = opening.spread.filter((_, i) => hardness(ways[i] as Found) === least);
  const body = best.blockedBy.length > 0 ? best : bodyPlace(opening, surface, look);
  const found: Found = {
    blockedBy: union(best.blockedBy, body.blockedBy),
    removeFirst: best.removeFirst,
    moveFirst: union(best.moveFirst, body.moveFirst),
  };
  const approach: Approach = { clear: found.blockedBy.length === 0, ...found, from };
  return kept.length < opening.spread.length && approach.clear
    ? { ...opening, spread: kept, partly: true, approach }
    : { ...opening, approach };
}

function comesFrom({ side, seenFrom }: Surface): Approach['from'] {
  if (side === 'underside') return 'under the coach';
  if (side === 'roof') return 'on the roof';
  return seenFrom;
}

const union = (a: readonly string[], b: readonly string[]): readonly string[] =>
  b.length === 0 ? a : [...new Set([...a, ...b])];

/** Clear, then with panels off or a slide moved, then not at all. */
const hardness = ({ blockedBy, removeFirst, moveFirst }: Found): number =>
  blockedBy.length > 0 ? Infinity : removeFirst.length + 2 * moveFirst.length;

/** The easiest way of a forearm out of the opening at one place of it. */
function armFrom(entry: Vec3, opening: PanelOpening, obstacles: Obstacles, look: Around): Found {
  let best: Found | undefined;
  for (const direction of directions(opening)) {
    const way = outwards(entry, direction, opening.inward);
    if (obstacles.isClear(way, opening)) return CLEAR;
    const found = sorted(obstacles.inTheWay(way, opening), look);
    if (!best || hardness(found) < hardness(best)) best = found;
  }
  return best ?? CLEAR;
}

/** The target lies a little inside, so that what stands close against the panel is not what the target is on. */
const outwards = (entry: Vec3, direction: Vec3, inward: Vec3): HandWay => ({
  start: add(entry, scale(direction, FOREARM_MM)),
  hand: add(entry, scale(direction, FINGER_MM / 2)),
  target: add(entry, scale(inward, INSIDE_MM)),
  radiusMm: HAND_RADIUS_MM,
});

const INSIDE_MM = 5;

function directions({ inward, u, v }: PanelOpening): readonly Vec3[] {
  const out = scale(inward, -1);
  const around = [0, 1, 2, 3, 4, 5, 6, 7].map((k) => {
    const angle = (k * Math.PI) / 4;
    return add(scale(u, Math.cos(angle)), scale(v, Math.sin(angle)));
  });
  return [
    out,
    ...SLANTS.flatMap((slant) => around.map((side) => add(scale(out, Math.cos(slant)), scale(side, Math.sin(slant))))),
  ];
}

function sorted(ids: readonly string[], { removable, riders }: Around): Found {
  const moves = new Set(ids.flatMap((id) => riders.get(id) ?? []));
  return {
    blockedBy: ids.filter((id) => !removable.has(id) && !riders.has(id)),
    removeFirst: ids.filter((id) => removable.has(id)),
    moveFirst: [...moves],
  };
}

/** Whether somebody finds room to lie or stand so near that an arm gets to the opening. Not asked on the roof, or without heights. */
function bodyPlace(opening: PanelOpening, surface: Surface, look: Around): Found {
  const { groundMm, floorMm, room } = look;
  const lying = surface.side === 'underside';
  const standsOn = surface.seenFrom === 'inside' ? floorMm : groundMm;
  if (standsOn === undefined || surface.side === 'roof') return CLEAR;
  const { acrossMm, highMm } = lying ? LYING : STANDING;
  const level = Math.abs(opening.inward[2]) > 0.7;
  const out = scale(opening.inward, -1);
  const aside = level ? ([1, 0, 0] as const) : cross(out, [0, 0, 1]);
  const along = level ? ([0, 1, 0] as const) : out;
  const offsets = level ? ASIDE_MM : [acrossMm / 2 + 25, acrossMm / 2 + 275];
  let first: Found | undefined;
  for (const near of offsets) {
    for (const wide of ASIDE_MM) {
      const middle = add(opening.center, add(scale(along, near), scale(aside, wide)));
      const half = acrossMm / 2;
      const bounds: Bounds = {
        min: [middle[0] - half, middle[1] - half, standsOn + STEP_MM],
        max: [middle[0] + half, middle[1] + half, standsOn + highMm],
      };
      if (surface.seenFrom === 'inside' && room && !isWithin(bounds, room)) continue;
      const found = sorted(
        look.solids.filter((one) => overlap(one.bounds, bounds)).map(({ solid }) => solid.id),
        look,
      );
      if (hardness(found) === 0) return CLEAR;
      if (!first || hardness(found) < hardness(first)) first = found;
    }
  }
  return first ?? CLEAR;
}

/** What is no higher is stepped over or lain on, mm. */
const STEP_MM = 60;
const SLACK_MM = 30;

const isWithin = (a: Bounds, { min, max }: Bounds): boolean =>
  a.min[0] >= min[0] - SLACK_MM &&
  a.max[0] <= max[0] + SLACK_MM &&
  a.min[1] >= min[1] - SLACK_MM &&
  a.max[1] <= max[1] + SLACK_MM;
