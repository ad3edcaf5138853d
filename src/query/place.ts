import { floorHeight } from '../compute/access/approach.js';
import { type Solid, solids } from '../compute/access/standing.js';
import { type Surface, surfaces, surfaceWords } from '../compute/access/surfaces.js';
import { zoneMap } from '../compute/access/zones.js';
import { ofModel } from '../compute/lazy.js';
import { lazy } from '../compute/lazy-value.js';
import { type Bounds, boundsOf, boxBounds, isInBox } from '../geometry/box.js';
import { type Facet, facet, throughFacet } from '../geometry/facet.js';
import { planarPolygon } from '../geometry/polygon.js';
import type { Vec3 } from '../geometry/vector.js';
import type { Model } from '../model/shell.js';
import { length, type UnitSystem } from '../quantity/format.js';
import type { Slot } from '../records/index.js';
import { isDoor } from '../records/opening.js';
import { type Language, type Reader, readerOf, sayTo, translated } from '../words/index.js';
import { findables } from './lookup/records.js';

/** Where a record is, in words that a stranger walks by; undefined where nothing says where. */
export type PlaceOf = (id: string) => string | undefined;

const FOUND = new WeakMap<Model, Map<Language, PlaceOf>>();
const ENGLISH = readerOf({});

/**
 * Places in words: as the shop wrote them, else worked out from what stands there: the equipment that it is in or of, the zone, the wall, inside or
 * outside, row and position, height over the floor or the ground, and the door on the way to it. In English for whoever asks at the prompt;
 * what the shop wrote stays as it is in every language.
 */
export function placesOf(model: Model, reader: Reader = ENGLISH): PlaceOf {
  const known = FOUND.get(model) ?? new Map<Language, PlaceOf>();
  FOUND.set(model, known);
  const found = known.get(reader.language);
  if (found) return found;
  const ready = reader.language === 'en' ? allPlaces.ifThere(model) : undefined;
  const work = worked(model, reader);
  const placeOf: PlaceOf = (id) => (ready?.has(id) ? ready.get(id) : work(id));
  known.set(reader.language, placeOf);
  return placeOf;
}

/** Of everything that has an id, for the next question. */
const allPlaces = ofModel('places in words', (model): ReadonlyMap<string, string | undefined> => {
  const placeOf = worked(model, ENGLISH);
  return new Map([...model.shell.byId.keys()].map((id) => [id, placeOf(id)]));
});

function worked(model: Model, reader: Reader): PlaceOf {
  const look = lazy(() => lookAround(model, reader));
  const words = new Map<string, string | undefined>();
  return (id) => {
    if (!words.has(id)) words.set(id, wordsOf(id, look()));
    return words.get(id);
  };
}

/** A tank is called by its contents, in the reader's words; other things as the shop named them. */
const solidName = ({ kind, name }: Solid, reader: Reader): string => (kind === 'tank' ? translated(reader, name) : name);

type Around = ReturnType<typeof lookAround>;

function lookAround(model: Model, reader: Reader) {
  const { shell, shop } = model;
  const sides = surfaces(model);
  const inside = shell.panels.filter(({ id }) => sides.get(id)?.seenFrom === 'inside');
  const outside = shell.panels.filter(({ id }) => sides.get(id)?.seenFrom === 'outside');
  const all = solids(model);
  return {
    shell,
    sides,
    positions: new Map(findables(shell).map(({ id, position }) => [id, position] as const)),
    panels: new Map(shell.panels.map((panel) => [panel.id, panel] as const)),
    nodes: new Map(shell.nodes.map((node) => [node.id, node] as const)),
    solids: all.filter(({ kind }) => kind !== 'rail' && kind !== 'cross member'),
    named: new Map([
      ...shell.components.map(({ id, name }) => [id, name] as const),
      ...all.map((one) => [one.id, solidName(one, reader)] as const),
    ]),
    zones: zoneMap(shell.zones),
    bellies: outside
      .filter(({ id }) => sides.get(id)?.side === 'underside')
      .flatMap(({ outline, holes }) => facet(outline, holes) ?? []),
    room: inside.length > 0 ? boundsOf(inside.flatMap(({ outline }) => outline)) : undefined,
    body: outside.length > 0 ? boundsOf(outside.flatMap(({ outline }) => outline)) : undefined,
    floorMm: floorHeight(model),
    groundMm: shell.chassis.frame.railTopAboveGroundMm === undefined ? undefined : -shell.chassis.frame.railTopAboveGroundMm,
    doors: shell.openings.filter(isDoor),
    units: shop.units,
    said: (words: string): string => translated(reader, words),
    w: sayTo(reader),
  };
}

function wordsOf(id: string, look: Around): string | undefined {
  const typed = (look.shell.byId.get(id)?.record as { readonly place?: string } | undefined)?.place;
  const node = look.nodes.get(id);
  const slot = slotWords(node?.slot).map(look.said);
  if (typed !== undefined) return [typed, ...slot].join(', ');
  const at = look.positions.get(id);
  const of = node?.of?.map((one) => look.named.get(one) ?? one);
  if (!at) return of || slot.length > 0 ? [...(of ?? []), ...slot].join(', ') : undefined;
  const panel = look.panels.get(id);
  const surface = panel && look.sides.get(id);
  const where =
    surface && panel ? onSurface(surface, planarPolygon(panel.outline).centroid, look) : inSpace(id, at, of, slot, look);
  // Without a body there are no thirds.
  return [...new Set(where)].filter((one) => one !== '').join(', ');
}

const slotWords = (slot: Slot | undefined): readonly string[] =>
  slot ? [...(slot.row === undefined ? [] : [`row ${slot.row}`]), `position ${slot.number}`] : [];

function onSurface(surface: Surface, at: Vec3, look: Around): readonly string[] {
  const inside = surface.seenFrom === 'inside';
  return [
    look.said(surfaceWords(surface)),
    look.said(alongWords(at, look)),
    ...(surface.side === 'ceiling' || surface.side === 'floor' || surface.side === 'roof' || surface.side === 'underside'
      ? [look.said(acrossWords(at))]
      : heightWords(at, inside, look)),
    ...(inside ? doorWords(at, look) : []),
  ];
}

function inSpace(
  id: string,
  at: Vec3,
  of: readonly string[] | undefined,
  slot: readonly string[],
  look: Around,
): readonly string[] {
  const { room } = look;
  const zone = look.zones.holding(at)[0];
  const isInside = room !== undefined && holds(room, at);
  const holding = of?.[0] === undefined ? smallestHolding(id, at, look.solids) : undefined;
  const holder = of?.[0] ?? (holding && look.named.get(holding.id));
  const region = isInside ? wallWords(at, room) : outsideWords(at, look);
  return [
    ...(holder ? [holder] : []),
    ...slot,
    look.said(region),
    ...(zone ? [zone.name] : SAYS_ITS_THIRD.has(region) ? [] : [look.said(alongWords(at, look))]),
    ...heightWords(at, isInside, look),
    ...(isInside ? doorWords(at, look, id) : []),
  ];
}

/** Regions at one end of the coach: a third of its length says no more. */
const SAYS_ITS_THIRD = new Set([
  'front wall, inside',
  'rear wall, inside',
  'ahead of the body, outside',
  'behind the body, outside',
]);

const holds = ({ min, max }: Bounds, at: Vec3): boolean =>
  at.every((value, k) => value >= (min[k] as number) - EDGE_MM && value <= (max[k] as number) + EDGE_MM);
/** What lies in a lining’s own wall counts as inside: a wall is so thick, mm. Project default. */
const EDGE_MM = 60;
/** So near to a wall a place is at it, mm. Project default. */
const AT_WALL_MM = 450;

function wallWords(at: Vec3, { min, max }: Bounds): string {
  const walls = [
    ['left wall', at[1] - min[1]],
    ['right wall', max[1] - at[1]],
    ['front wall', at[0] - min[0]],
    ['rear wall', max[0] - at[0]],
  ] as const;
  const [name, away] = walls.reduce((best, one) => (one[1] < best[1] ? one : best));
  if (max[2] - at[2] < AT_WALL_MM / 3) return 'ceiling, inside';
  return away <= AT_WALL_MM ? `${name}, inside` : 'inside, away from the walls';
}

function outsideWords(at: Vec3, { body, room, bellies }: Around): string {
  if (!body) return 'on the chassis';
  if (at[2] > body.max[2] - EDGE_MM) return 'on the roof';
  const half = (body.min[1] + body.max[1]) / 2;
  const side = at[1] < half ? 'left' : 'right';
  if (at[0] < body.min[0]) return 'ahead of the body, outside';
  if (at[0] > body.max[0]) return 'behind the body, outside';
  // A skin is a few millimetres thick: what lies between it and the lining is in the wall.
  if (at[1] < body.min[1] - 1 || at[1] > body.max[1] + 1) return `${side} side, outside`;
  const isUnderFloor = room === undefined || at[2] < room.min[2];
  if (isUnderFloor && bellies.some((sheet) => isOver(at, sheet))) return `between the floor and the belly, ${acrossWords(at)}`;
  const low = body.min[2] + BELLY_MM;
  if (isUnderFloor && at[2] < low) return `under the coach, ${acrossWords(at)}`;
  return room ? betweenSheets(at, room) : `in the body, ${side}`;
}

/** What lies within the body and not in the room lies between a lining and its skin. */
function betweenSheets(at: Vec3, { min, max }: Bounds): string {
  if (at[2] > max[2]) return `between the ceiling and the roof, ${acrossWords(at)}`;
  if (at[1] < min[1]) return 'in the left wall';
  if (at[1] > max[1]) return 'in the right wall';
  if (at[0] < min[0]) return 'in the front wall';
  return at[0] > max[0] ? 'in the rear wall' : `in the floor, ${acrossWords(at)}`;
}
/** A belly sheet stands below the place, so that nobody sees it from under the coach. */
const isOver = (at: Vec3, sheet: Facet): boolean => throughFacet(at, [at[0], at[1], at[2] - MOST_BELOW_MM], sheet) !== undefined;
/** Further below, a sheet is no part of the floor, mm. Project default. */
const MOST_BELOW_MM = 600;
/** Where no belly sheet is recorded: what is so little above the lowest sheet hangs under the coach, mm. Project default. */
const BELLY_MM = 260;

const acrossWords = ([, y]: Vec3): string => (Math.abs(y) < 150 ? 'in the middle' : y < 0 ? 'left' : 'right');

/** Thirds along the body. */
function alongWords([x]: Vec3, { body, room }: Around): string {
  const span = room ?? body;
  if (!span) return '';
  const share = (x - span.min[0]) / Math.max(1, span.max[0] - span.min[0]);
  return share < 1 / 3 ? 'front third' : share > 2 / 3 ? 'rear third' : 'middle third';
}

function heightWords(at: Vec3, isInside: boolean, { floorMm, groundMm, units, said }: Around): readonly string[] {
  const from = isInside ? floorMm : groundMm;
  if (from === undefined) return [];
  const system: UnitSystem = units === 'both' ? 'us' : units;
  const upMm = at[2] - from;
  const what = isInside ? 'the floor' : 'the ground';
  if (Math.abs(upMm) < AT_LEVEL_MM) return [said(isInside ? 'at floor level' : 'at ground level')];
  return [said(upMm >= 0 ? `${length(upMm, system)} above ${what}` : `${length(-upMm, system)} below ${what}`)];
}

/** So near to the floor or the ground it is neither above nor below it, mm. Project default: half an inch. */
const AT_LEVEL_MM = 12.7;

/** The nearest opening whose kind is a door. */
function doorWords(at: Vec3, { doors, said, w }: Around, id?: string): readonly string[] {
  const away = (door: (typeof doors)[number]): number =>
    Math.min(...door.sill.map((end) => Math.hypot(end[0] - at[0], end[1] - at[1])));
  const nearest = doors.reduce<(typeof doors)[number] | undefined>(
    (best, one) => (!best || away(one) < away(best) ? one : best),
    undefined,
  );
  // A door is not found by itself.
  return nearest && nearest.id !== id ? [w('place.by', { door: said(nearest.openingKind), id: nearest.id })] : [];
}

function smallestHolding(id: string, at: Vec3, all: readonly Solid[]): Solid | undefined {
  const size = ({ box }: Solid): number => box.half[0] * box.half[1] * box.half[2];
  return all
    .filter((one) => one.id !== id && isInBox(at, one.box, HOLDING_MM) && Math.min(...spans(one)) > THIN_MM)
    .reduce<Solid | undefined>((best, one) => (!best || size(one) < size(best) ? one : best), undefined);
}
/** On the face of equipment is at it, mm. */
const HOLDING_MM = 10;
/** Thinner than this nothing is in it: a floor is no cabinet, mm. */
const THIN_MM = 80;
const spans = ({ box }: Solid): readonly number[] => {
  const { min, max } = boxBounds(box);
  return min.map((low, k) => (max[k] as number) - low);
};
