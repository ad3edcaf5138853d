import type { Vec3 } from '../../geometry/vector.js';
import type { Axle, AxleReading } from '../../records/index.js';
import { type AxleModel, reactions } from './axle-reactions.js';
import { centroidOf, type Load, NO_LOAD, plus, times } from './load.js';

/** What a scale found under each axle: kg and the moment to the right of the centre line, kg·mm, in the order of the axles. */
export interface Weighed {
  readonly axlesKg: readonly number[];
  readonly turnKgMm: readonly number[];
}

/**
 * A loaded vehicle: what was weighed, axle by axle, and what was put on or taken off by position since. Weighed figures stay with
 * their axle, because they know how the axles truly share; placed masses are handed down by statics.
 */
export interface VehicleLoad {
  readonly weighed: Weighed;
  readonly placed: Load;
  /** Upward moment of the weighed part, kg·mm, as predicted: a scale does not see height. */
  readonly heightKgMm: number;
  /** By whose vertical loads a moment to a side is shared; absent: by this vehicle's own. */
  readonly sharedAs?: SharedAs;
}

/**
 * The vehicle by whose vertical loads every moment to a side is shared between axles: the unladen one. Held fixed, so that the load on an
 * end is a sum over what is loaded, and the worst loading of an end a linear programme.
 */
export interface SharedAs {
  readonly axlesKg: readonly number[];
  readonly load: Load;
}

export const nothingWeighed = (axles: readonly Axle[]): Weighed => ({
  axlesKg: axles.map(() => 0),
  turnKgMm: axles.map(() => 0),
});

export const placedOn = (axles: readonly Axle[], placed: Load): VehicleLoad => ({
  weighed: nothingWeighed(axles),
  placed,
  heightKgMm: 0,
});

export const carrying = (vehicleLoad: VehicleLoad, ...loads: readonly Load[]): VehicleLoad => ({
  ...vehicleLoad,
  placed: loads.reduce(plus, vehicleLoad.placed),
});

/** The weighed part as one load at the axles, for moving it to other axles. */
export function loadOfWeighed({ axlesKg, turnKgMm }: Weighed, axles: readonly Axle[], heightKgMm = 0): Load {
  return axlesKg.reduce<Load>(
    (sum, kg, i) => plus(sum, { massKg: kg, xKgMm: kg * (axles[i] as Axle).xMm, yKgMm: turnKgMm[i] as number, zKgMm: 0 }),
    { ...NO_LOAD, zKgMm: heightKgMm },
  );
}

export const totalOf = (vehicleLoad: VehicleLoad, axles: readonly Axle[]): Load =>
  plus(loadOfWeighed(vehicleLoad.weighed, axles, vehicleLoad.heightKgMm), vehicleLoad.placed);

/** A vehicle’s load standing on its axles. */
export interface StandingLoad {
  readonly total: Load;
  readonly centroid: Vec3;
  /** Empty where the layout is not determined. */
  readonly axlesKg: readonly number[];
  readonly leftKg: readonly (number | undefined)[];
  readonly rightKg: readonly (number | undefined)[];
}

/**
 * Sets a vehicle’s load down on its axles. With an axle lifted the weighed part is handed down anew by statics. The moment to a side is
 * shared between axles in proportion to their vertical load (of the unladen vehicle, where one is given): roll stiffness is not on record.
 */
export function solveAxleLoads(vehicleLoad: VehicleLoad, axles: readonly Axle[], axleModel: AxleModel | undefined): StandingLoad {
  const total = totalOf(vehicleLoad, axles);
  const base = { total, centroid: centroidOf(total) };
  if (!axleModel) return { ...base, axlesKg: [], leftKg: [], rightKg: [] };
  const afoot = axleModel.lifted.size === 0;
  const added = reactions(axleModel, afoot ? vehicleLoad.placed : total);
  const axlesKg = added.map((kg, i) => kg + (afoot ? (vehicleLoad.weighed.axlesKg[i] as number) : 0));
  const shares = vehicleLoad.sharedAs ? sideShares(vehicleLoad.sharedAs, axleModel) : portions(axlesKg, total.massKg);
  const turns = turnsOf(vehicleLoad, axles, axleModel, shares);
  const ends = axlesKg.map((kg, i) => endsOf(kg, turns[i] as number, (axles[i] as Axle).trackMm));
  return { ...base, axlesKg, leftKg: ends.map((end) => end?.[0]), rightKg: ends.map((end) => end?.[1]) };
}

/** The same vehicle, with its own vertical loads as those by which a side load is shared whatever is loaded on it. */
export function sharedByItself(vehicleLoad: VehicleLoad, axles: readonly Axle[], axleModel: AxleModel | undefined): VehicleLoad {
  const { axlesKg, total } = solveAxleLoads(vehicleLoad, axles, axleModel);
  return axlesKg.length === 0 ? vehicleLoad : { ...vehicleLoad, sharedAs: { axlesKg, load: total } };
}

/** The part of a moment to a side that each axle takes. A lifted axle takes none. */
export const sideShares = ({ axlesKg, load }: SharedAs, axleModel: AxleModel): readonly number[] =>
  portions(axleModel.lifted.size === 0 ? axlesKg : reactions(axleModel, load), load.massKg);

const portions = (kg: readonly number[], whole: number): readonly number[] => kg.map((each) => each / (whole === 0 ? 1 : whole));

/** Moment to the right on each axle, kg·mm: what was weighed keeps to its axle, what was placed is shared. */
export function turnsOf(
  vehicleLoad: VehicleLoad,
  axles: readonly Axle[],
  axleModel: AxleModel,
  shares: readonly number[],
): readonly number[] {
  const afoot = axleModel.lifted.size === 0;
  const moved = afoot ? vehicleLoad.placed : totalOf(vehicleLoad, axles);
  return shares.map((share, i) => (afoot ? (vehicleLoad.weighed.turnKgMm[i] as number) : 0) + moved.yKgMm * share);
}

/** Left and right end of an axle: W/2 ∓ T/track. */
export function endsOf(kg: number, turnKgMm: number, trackMm: number | undefined): readonly [number, number] | undefined {
  if (trackMm === undefined || trackMm <= 0) return undefined;
  return [kg / 2 - turnKgMm / trackMm, kg / 2 + turnKgMm / trackMm];
}

/** Moment to the right that the ends of a reading show, kg·mm. Worked: 5600 left, 5400 right on 2050 mm: 18.64 mm left of centre. */
export function turnOf(reading: AxleReading | undefined, trackMm: number | undefined): number | undefined {
  if (reading?.leftKg === undefined || reading.rightKg === undefined || trackMm === undefined) return undefined;
  return ((reading.rightKg - reading.leftKg) * trackMm) / 2;
}

export const minus = (vehicleLoad: VehicleLoad, load: Load): VehicleLoad => carrying(vehicleLoad, times(load, -1));
