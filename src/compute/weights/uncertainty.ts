import type { Axle } from '../../records/index.js';
import type { AxleModel } from './axle-reactions.js';
import type { Load } from './load.js';
import type { Verdict } from './types.js';
import {
  endsOf,
  placedOn,
  type SharedAs,
  sideShares,
  solveAxleLoads,
  totalOf,
  turnsOf,
  type VehicleLoad,
} from './vehicle-load.js';

/**
 * Uncertainty of an axle load, root sum of squares of independent sources (JCGM 100:2008 5.1.2). A source is one standard
 * uncertainty written as the load that it would add: its sensitivity on each axle follows by the same statics as the load itself,
 * so that what one source does to two axles stays correlated in their sum.
 */
export interface UncertaintySource {
  /** What it comes from; like sources share a name and are told as one. */
  readonly name: string;
  readonly what: VehicleLoad | Spread;
}

/**
 * Many independent small placed sources as one: an axle takes a·m + b·mx of each, so Σ (a·m + b·mx)² = a²·Σm² + 2ab·Σm·mx + b²·Σmx²;
 * an end takes c·my as well. A shell has thousands of items; six sums stand for them in every condition.
 */
export interface Spread {
  /** Σ m², kg². */
  readonly massSquares: number;
  /** Σ m·(m·x), kg²·mm. */
  readonly crossed: number;
  /** Σ (m·x)², kg²·mm². */
  readonly momentSquares: number;
  /** Σ m·(m·y), kg²·mm. */
  readonly sideCrossed: number;
  /** Σ (m·x)·(m·y), kg²·mm². */
  readonly momentsCrossed: number;
  /** Σ (m·y)², kg²·mm². */
  readonly sideSquares: number;
}

export const spreadOf = (loads: Iterable<Pick<Load, 'massKg' | 'xKgMm'> & { readonly yKgMm?: number }>): Spread => {
  const sums = { massSquares: 0, crossed: 0, momentSquares: 0, sideCrossed: 0, momentsCrossed: 0, sideSquares: 0 };
  for (const { massKg, xKgMm, yKgMm = 0 } of loads) {
    sums.massSquares += massKg * massKg;
    sums.crossed += massKg * xKgMm;
    sums.momentSquares += xKgMm * xKgMm;
    sums.sideCrossed += massKg * yKgMm;
    sums.momentsCrossed += xKgMm * yKgMm;
    sums.sideSquares += yKgMm * yKgMm;
  }
  return sums;
};

/** Coverage factor: about 95 % for a normal distribution (JCGM 100:2008 annex G). */
export const COVERAGE = 2;

/** Standard uncertainty of a value known to lie within ± the half-width, none more likely than another (JCGM 100:2008 4.3.7). */
export const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3);

/** Standard uncertainty of a reading shown in steps of d: d / (2√3) (JCGM 100:2008 F.2.2.1). */
export const ofResolution = (step: number): number => step / (2 * Math.sqrt(3));

export const rootSumOfSquares = (values: Iterable<number>): number => {
  let sum = 0;
  for (const value of values) sum += value * value;
  return Math.sqrt(sum);
};

export const sourceOfLoad = (name: string, axles: readonly Axle[], load: Load): UncertaintySource => ({
  name,
  what: placedOn(axles, load),
});

export interface Expanded {
  /** k = 2, each axle; empty where the layout is not determined. */
  readonly axlesKg: readonly number[];
  /** k = 2, each end; nothing where the track is not on record or no way of sharing is given. */
  readonly leftKg: readonly (number | undefined)[];
  readonly rightKg: readonly (number | undefined)[];
  readonly totalKg: number;
  /** By source name, k = 2: each axle, the total, then left and right end of each axle. */
  readonly byName: ReadonlyMap<string, readonly number[]>;
}

/** Combines sources for one way of standing on the axles. `sharedAs`: how a moment to a side is shared, without which ends are left out. */
export function combine(
  sources: readonly UncertaintySource[],
  axles: readonly Axle[],
  axleModel: AxleModel | undefined,
  sharedAs?: SharedAs,
): Expanded {
  const shares = axleModel && sharedAs ? sideShares(sharedAs, axleModel) : undefined;
  const squares = new Map<string, number[]>();
  for (const { name, what } of sources) {
    const row =
      'massSquares' in what
        ? spreadRow(what, axles, axleModel, shares)
        : rowOf(what, axles, axleModel, shares).map((kg) => kg * kg);
    const sums = squares.get(name) ?? row.map(() => 0);
    row.forEach((square, i) => {
      sums[i] = (sums[i] as number) + square;
    });
    squares.set(name, sums);
  }
  const byName = new Map([...squares].map(([name, sums]) => [name, sums.map((sum) => COVERAGE * Math.sqrt(sum))]));
  const count = axleModel ? axles.length : 0;
  const column = (i: number): number => rootSumOfSquares([...byName.values()].map((row) => row[i] as number));
  const end = (first: number) =>
    Array.from({ length: count }, (_, i) => (shares && hasTrack(axles[i] as Axle) ? column(count + 1 + first + i) : undefined));
  return {
    axlesKg: Array.from({ length: count }, (_, i) => column(i)),
    leftKg: end(0),
    rightKg: end(count),
    totalKg: column(count),
    byName,
  };
}

const hasTrack = ({ trackMm }: Axle): boolean => trackMm !== undefined && trackMm > 0;

/** What a source adds to each axle, to the total, and to the left and right end of each axle. */
function rowOf(
  vehicleLoad: VehicleLoad,
  axles: readonly Axle[],
  axleModel: AxleModel | undefined,
  shares: readonly number[] | undefined,
): readonly number[] {
  const { axlesKg, total } = solveAxleLoads(vehicleLoad, axles, axleModel);
  if (!axleModel || !shares) return [...axlesKg, total.massKg];
  const turns = turnsOf(vehicleLoad, axles, axleModel, shares);
  const ends = axlesKg.map((kg, i) => endsOf(kg, turns[i] as number, axles[i]?.trackMm) ?? [0, 0]);
  return [...axlesKg, total.massKg, ...ends.map(([left]) => left), ...ends.map(([, right]) => right)];
}

/** The squares that a spread adds to each axle's, to the total's, and to those of each end. */
function spreadRow(
  spread: Spread,
  axles: readonly Axle[],
  axleModel: AxleModel | undefined,
  shares: readonly number[] | undefined,
): readonly number[] {
  const { massSquares, crossed, momentSquares, sideCrossed, momentsCrossed, sideSquares } = spread;
  const square = (a: number, b: number, c: number): number =>
    Math.max(
      0,
      a * a * massSquares +
        2 * a * b * crossed +
        b * b * momentSquares +
        2 * a * c * sideCrossed +
        2 * b * c * momentsCrossed +
        c * c * sideSquares,
    );
  const each = (axleModel?.perKg ?? []).map((a, i) => [a, axleModel?.perKgMm[i] as number] as const);
  const whole = each.map(([a, b]) => square(a, b, 0));
  if (!shares) return [...whole, massSquares];
  const end = (outward: number): readonly number[] =>
    each.map(([a, b], i) =>
      square(a / 2, b / 2, (outward * (shares[i] as number)) / (axles[i]?.trackMm || Number.POSITIVE_INFINITY)),
    );
  return [...whole, massSquares, ...end(-1), ...end(1)];
}

/**
 * Expanded uncertainty (k = 2) of the station of the centre of gravity, mm: x = Σm·x ÷ W, so each source moves it by
 * (its moment − x × its mass) ÷ W (JCGM 100:2008 5.1.2). Nothing where there is no mass.
 */
export function xUncertaintyMm(
  sources: readonly UncertaintySource[],
  axles: readonly Axle[],
  totalKg: number,
  xMm: number,
): number | undefined {
  if (totalKg <= 0) return undefined;
  const squares = sources.map(({ what }) => {
    if ('massSquares' in what) return what.momentSquares - 2 * xMm * what.crossed + xMm * xMm * what.massSquares;
    const { massKg, xKgMm } = totalOf(what, axles);
    return (xKgMm - xMm * massKg) ** 2;
  });
  const sum = squares.reduce((all, one) => all + Math.max(0, one), 0);
  return (COVERAGE * Math.sqrt(sum)) / totalKg;
}

/** Contributions to one column (an axle's place, or their count for the total), largest first; what adds nothing is left out. */
export function contributions({ byName }: Expanded, column: number): readonly { readonly name: string; readonly kg: number }[] {
  return [...byName]
    .map(([name, row]) => ({ name, kg: row[column] ?? 0 }))
    .filter(({ kg }) => kg >= 0.05)
    .sort((a, b) => b.kg - a.kg);
}

/**
 * A margin smaller than its expanded uncertainty is "within uncertainty", never "within".
 * Worked: margin 40 kg, U 45 kg: within uncertainty; 50 kg: within; −1 kg: over.
 */
export function verdictOf(marginKg: number | undefined, uncertaintyKg: number): Verdict {
  if (marginKg === undefined) return 'not verified';
  // A load equal to its limit is not over it: floating-point dust must not say so.
  if (marginKg < -1e-6) return 'over';
  return marginKg < uncertaintyKg ? 'within uncertainty' : 'within';
}
