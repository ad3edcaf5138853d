import type { Model } from '../../model/shell.js';
import type { Declared } from '../../records/index.js';
import type { MassItem } from '../takeoff/types.js';
import { type Load, sumOf, times } from './load.js';
import type { PointLoad } from './types.js';

/** Standard gravity, m/s² (ISO 80000-3; exact by definition). */
export const GRAVITY = 9.80665;

/** What each point carries when all of one kind work together. */
const TOGETHER = ['lift', 'jack', 'stand', 'tow'] as const;
/** What carries named records: a mounting, a floor, a roof. */
const CARRIES = new Set(['mounting', 'wall load', 'floor load', 'roof load']);

/**
 * What every declared point is asked to carry. Points for lifting, jacking and towing share the heaviest unladen mass by statics from its
 * centre of gravity: R = a + b·x + c·y with ΣR, ΣR·x and ΣR·y those of the mass, the even share of equal springs (textbook statics of a
 * rigid body on elastic supports). A mounting, floor or roof carries the recorded masses that it is declared for (`of`).
 */
export function pointLoads(
  model: Model,
  vehicle: Load | undefined,
  shell: Load,
  items: readonly MassItem[],
): readonly PointLoad[] {
  const { declared } = model.shell;
  const shared = TOGETHER.flatMap((kind) => {
    const points = declared.filter((one) => one.declaredKind === kind);
    const shells = points.filter((one) => one.lifts === 'shell');
    const wholes = points.filter((one) => one.lifts !== 'shell');
    return [...sharesOf(shells, shell), ...(vehicle ? sharesOf(wholes, vehicle) : [])];
  });
  const masses = new Map(items.map((item) => [item.id, item.massKg]));
  const carrying = declared
    .filter((one) => CARRIES.has(one.declaredKind))
    .flatMap((one): PointLoad[] => {
      const known = one.of.filter((id) => masses.has(id));
      const massKg = known.reduce((sum, id) => sum + (masses.get(id) as number), 0);
      return known.length === 0 ? [] : [pointLoad(one, massKg, massKg)];
    });
  return [...shared, ...carrying];
}

function sharesOf(points: readonly Declared[], load: Load): readonly PointLoad[] {
  const placed = points.filter((one) => one.at !== undefined);
  if (placed.length === 0 || load.massKg <= 0) return [];
  const shares = evenShares(
    placed.map(({ at }) => [at?.[0] as number, at?.[1] as number]),
    load,
  );
  return placed.map((one, i) => pointLoad(one, shares[i] as number, load.massKg));
}

function pointLoad(one: Declared, loadKg: number, ofKg: number): PointLoad {
  const ratingKg = ratingOf(one);
  return {
    id: one.id,
    kind: one.declaredKind,
    ofKg,
    loadKg,
    ...(ratingKg === undefined ? {} : { ratingKg }),
    lifts: one.lifts ?? 'not recorded',
    unboltFirst: one.unboltFirst ?? [],
  };
}

/** The mass that a rating holds, of a force by standard gravity; nothing for a load on an area. */
const ratingOf = ({ rating }: Declared): number | undefined =>
  rating?.dimension === 'force' ? rating.value / GRAVITY : rating?.dimension === 'mass' ? rating.value : undefined;

/**
 * Even shares of a mass on points: the least sum of squares that balances it. One point, or points in a line, balance what they can.
 * Worked: four corners of a rectangle with the mass in the middle take a quarter each.
 */
export function evenShares(points: readonly (readonly [x: number, y: number])[], load: Load): readonly number[] {
  const count = points.length;
  const mean = (of: 0 | 1): number => points.reduce((sum, point) => sum + point[of], 0) / count;
  const [x0, y0] = [mean(0), mean(1)];
  const off = points.map(([x, y]) => [x - x0, y - y0] as const);
  const sum = (of: (dx: number, dy: number) => number): number => off.reduce((total, [dx, dy]) => total + of(dx, dy), 0);
  const [xx, yy, xy] = [sum((x) => x * x), sum((_, y) => y * y), sum((x, y) => x * y)];
  const [mx, my] = [load.xKgMm - load.massKg * x0, load.yKgMm - load.massKg * y0];
  const whole = xx * yy - xy * xy;
  const small = 1e-9 * Math.max(1, (xx + yy) ** 2);
  const b = whole > small ? (mx * yy - my * xy) / whole : xx > small ? mx / xx : 0;
  const c = whole > small ? (my * xx - mx * xy) / whole : yy > small ? my / yy : 0;
  return off.map(([dx, dy]) => load.massKg / count + b * dx + c * dy);
}

/** Everything recorded, without the chassis; or the whole at its heavy end: with its uncertainty on top. */
export const shellAlone = (items: readonly MassItem[]): Load =>
  sumOf(
    items.map(({ massKg, uMassKg, centroid }) => {
      const kg = massKg + uMassKg;
      return { massKg: kg, xKgMm: kg * centroid[0], yKgMm: kg * centroid[1], zKgMm: kg * centroid[2] };
    }),
  );

export const heaviest = (load: Load, uncertaintyKg: number): Load =>
  load.massKg <= 0 ? load : times(load, (load.massKg + uncertaintyKg) / load.massKg);
