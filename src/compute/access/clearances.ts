import { type Bounds, type Box, boundsOf, boxBetween, boxBounds, grow, nearestInBox, overlap } from '../../geometry/box.js';
import { type Convex, convexOfBox } from '../../geometry/convex.js';
import { convexDistance } from '../../geometry/convex-distance.js';
import { add, cross, distance, lerp, subtract, unit, type Vec3 } from '../../geometry/vector.js';
import { placedNodes } from '../../model/placed.js';
import type { Model } from '../../model/shell.js';
import { memberBody, memberBounds } from '../structure/solids-of.js';
import type { TakeOff } from '../takeoff/types.js';
import { type MovingPart, movingParts, type UnknownEnvelope } from './moving.js';
import { componentBox } from './walls.js';

/** Something that stands closer to a moving or hot part than it may. */
export interface TooNear {
  /** Axle, opening or component that moves or is hot, and what to call it. */
  readonly part: string;
  readonly name: string;
  readonly kind: MovingPart['kind'] | 'hot';
  /** What stands too near. */
  readonly id: string;
  readonly what: 'run' | 'node' | 'member' | 'component';
  /** Outside to outside less the recorded tolerance, mm; 0 where they may meet. */
  readonly distanceMm: number;
  readonly recordedMm: number;
  readonly limitMm: number;
  /** Where it is nearest. */
  readonly at: Vec3;
}

export interface Clearances {
  /** Each pair once, at its worst place; nearest first. */
  readonly tooNear: readonly TooNear[];
  /** Tyres and slides whose room is not known: not judged. */
  readonly unknown: readonly UnknownEnvelope[];
}

const MOVING_MM = 50;
const HOT_MM = { dry: 230, wet: 50 } as const;
/** A run that ends on a hot part serves it. Project default, mm. */
const SERVES_MM = 75;

/** Runs, nodes, members and equipment closer to the room of a tyre than they may be; runs and nodes to a slide's and to what is hot. */
export function clearances(model: Model, takeOff: Pick<TakeOff, 'runs'>): Clearances {
  const { parts, unknown } = movingParts(model);
  const stretches = stretchesOf(model, takeOff);
  const limitMm = model.shop.limits.movingClearanceMm ?? MOVING_MM;
  const solids = solidsOf(
    model,
    parts.filter(({ kind }) => kind === 'tyre').map(({ bounds }) => grow(bounds, limitMm)),
  );
  const tooNear = [
    ...parts.flatMap((part) => [
      ...nearestOfEach(without(stretches, part.own), part, part.bounds, limitMm, (one) => convexDistance(one.line, part.room)),
      ...(part.kind === 'tyre'
        ? nearestOfEach(solids, part, part.bounds, limitMm, (one) => convexDistance(one.line, part.room))
        : []),
    ]),
    ...hotParts(model).flatMap((part) =>
      nearestOfEach(
        stretches.filter(({ serves }) => !serves.some((at) => distanceToBox(at, part.box) <= SERVES_MM)),
        part,
        boxBounds(part.box),
        part.limitMm,
        (one) => convexDistance(one.line, convexOfBox(part.box)),
      ),
    ),
  ];
  return { tooNear: tooNear.sort((a, b) => a.distanceMm - b.distanceMm || (a.id < b.id ? -1 : 1)), unknown };
}

/** What belongs to a moving part, by itself or by its circuit, is not in its way. */
const without = (pieces: readonly Piece[], own: readonly string[]): readonly Piece[] =>
  own.length === 0 ? pieces : pieces.filter(({ id, circuit }) => !own.includes(id) && !(circuit && own.includes(circuit)));

/** A straight piece of something, by its middle line or its solid, and how much thicker it may be. */
interface Piece {
  readonly id: string;
  readonly what: TooNear['what'];
  readonly line: Convex;
  readonly bounds: Bounds;
  readonly radiusMm: number;
  readonly toleranceMm: number;
  readonly circuit?: string | undefined;
  /** Ends of the run that it is of. */
  readonly serves: readonly Vec3[];
}

function nearestOfEach(
  pieces: readonly Piece[],
  { id: part, name, kind }: { readonly id: string; readonly name: string; readonly kind: TooNear['kind'] },
  bounds: Bounds,
  limitMm: number,
  distanceOf: (piece: Piece) => number,
): readonly TooNear[] {
  const worst = new Map<string, TooNear>();
  for (const piece of pieces) {
    const { id, what, radiusMm, toleranceMm } = piece;
    if (id === part || !overlap(grow(bounds, limitMm + radiusMm + toleranceMm), piece.bounds)) continue;
    const recordedMm = Math.max(0, distanceOf(piece) - radiusMm);
    const distanceMm = Math.max(0, recordedMm - toleranceMm);
    if (distanceMm >= limitMm || distanceMm >= (worst.get(id)?.distanceMm ?? Infinity)) continue;
    worst.set(id, { part, name, kind, id, what, distanceMm, recordedMm, limitMm, at: nearPlace(piece, bounds) });
  }
  return [...worst.values()];
}

/** The middle of what the two bounds share when one is grown to meet the other: near enough to find the place. */
function nearPlace({ bounds }: Piece, about: Bounds): Vec3 {
  const at = [0, 1, 2].map((k) => {
    const [low, high] = [bounds.min[k] as number, bounds.max[k] as number];
    const [from, to] = [Math.max(low, about.min[k] as number), Math.min(high, about.max[k] as number)];
    if (from <= to) return (from + to) / 2;
    return from > high ? high : low;
  });
  return at as unknown as Vec3;
}

function stretchesOf({ shell }: Model, takeOff: Pick<TakeOff, 'runs'>): readonly Piece[] {
  const outside = new Map(takeOff.runs.map((run) => [run.id, run.outsideDiameterMm ?? 0] as const));
  const runs = shell.runs.flatMap((run) =>
    run.path.slice(1).flatMap((to, i): readonly Piece[] => {
      const from = run.path[i] as Vec3;
      if (distance(from, to) === 0) return [];
      const serves = [run.path[0] as Vec3, run.path.at(-1) as Vec3];
      const radiusMm = (outside.get(run.id) ?? 0) / 2;
      const toleranceMm = run.toleranceMm ?? 0;
      const shape = { line: thinBox(from, to), bounds: boundsOf([from, to]) };
      return [{ id: run.id, what: 'run', ...shape, radiusMm, toleranceMm, serves, circuit: run.circuit }];
    }),
  );
  const nodes = placedNodes(shell.nodes).map(({ id, at, circuit, toleranceMm = 0 }): Piece => {
    return {
      id,
      what: 'node',
      line: convexOfBox(speck(at)),
      bounds: { min: at, max: at },
      radiusMm: 0,
      toleranceMm,
      serves: [at],
      circuit,
    };
  });
  return [...runs, ...nodes];
}

/** A line as a solid so thin that its thickness is below any rounding. */
const HAIR_MM = 1e-4;
const speck = (at: Vec3): Box => boxBetween(subtract(at, [HAIR_MM, HAIR_MM, HAIR_MM]), add(at, [HAIR_MM, HAIR_MM, HAIR_MM]));

function thinBox(from: Vec3, to: Vec3): Convex {
  const along = unit(subtract(to, from));
  const aside = unit(cross(along, Math.abs(along[2]) < 0.7 ? [0, 0, 1] : [1, 0, 0]));
  const half = [distance(from, to) / 2, HAIR_MM, HAIR_MM] as const;
  return convexOfBox({ center: lerp(from, to, 0.5), axes: [along, aside, cross(along, aside)], half });
}

/** Bounds are taken this much wider than they are computed, mm. */
const ROUNDING_MM = 1e-6;

/** Members near some places, and equipment of known size that does not belong to the running gear. */
function solidsOf(model: Model, places: readonly Bounds[]): readonly Piece[] {
  if (places.length === 0) return [];
  const rest = { radiusMm: 0, serves: [] };
  const isNear = (bounds: Bounds): boolean => places.some((place) => overlap(grow(place, ROUNDING_MM), bounds));
  const members = model.shell.members.flatMap((member) => {
    const bounds = memberBounds(member, model);
    if (!bounds || !isNear(bounds)) return [];
    return (memberBody(member, model)?.parts ?? []).map((line): Piece => {
      return { id: member.id, what: 'member', line, bounds: boundsOf(line.corners), toleranceMm: 0, ...rest };
    });
  });
  const components = model.shell.components.flatMap((component): readonly Piece[] => {
    const box = componentBox(component);
    if (!box) return [];
    const toleranceMm = component.toleranceMm ?? 0;
    return [{ id: component.id, what: 'component', line: convexOfBox(box), bounds: boxBounds(box), toleranceMm, ...rest }];
  });
  return [...members, ...components];
}

interface HotPart {
  readonly id: string;
  readonly name: string;
  readonly kind: 'hot';
  readonly box: Box;
  readonly limitMm: number;
}

function hotParts({ shell, shop }: Model): readonly HotPart[] {
  const limits = shop.limits.hotClearanceMm ?? HOT_MM;
  return shell.components.flatMap((component): readonly HotPart[] => {
    if (!component.hot) return [];
    const box = componentBox(component) ?? speck(component.at);
    const limitMm = component.keepClearMm ?? limits[component.hot];
    return [{ id: component.id, name: `${component.name} (${component.id})`, kind: 'hot', box, limitMm }];
  });
}

const distanceToBox = (at: Vec3, box: Box): number => distance(at, nearestInBox(at, box));
