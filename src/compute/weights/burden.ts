import type { Vec3 } from '../../geometry/vector.js';
import type { Axle, AxleReading } from '../../model/shell.js';
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

export const carrying = (burden: VehicleLoad, ...loads: readonly Load[]): VehicleLoad => ({
  ...burden,
  placed: loads.reduce(plus, burden.placed),
});

/** The weighed part as one load at the axles, for moving it to other axles. */
export function loadOfWeighed({ axlesKg, turnKgMm }: Weighed, axles: readonly Axle[], heightKgMm = 0): Load {
  return axlesKg.reduce<Load>(
    (sum, kg, i) => plus(sum, { massKg: kg, xKgMm: kg * (axles[i] as Axle).xMm, yKgMm: turnKgMm[i] as number, zKgMm: 0 }),
    { ...NO_LOAD, zKgMm: heightKgMm },
  );
}

export const totalOf = (burden: VehicleLoad, axles: readonly Axle[]): Load =>
  plus(loadOfWeighed(burden.weighed, axles, burden.heightKgMm), burden.placed);

/** A burden standing on its axles. */
export interface Standing {
  readonly total: Load;
  readonly centroid: Vec3;
  /** Empty where the layout is not determined. */
  readonly axlesKg: readonly number[];
  readonly leftKg: readonly (number | undefined)[];
  readonly rightKg: readonly (number | undefined)[];
}

/**
 * Sets a burden down on its axles. With an axle lifted the weighed part is handed down anew by statics. The moment to a side is
 * shared between axles in proportion to their vertical load: roll stiffness is not on record.
 */
export function solveAxleLoads(burden: VehicleLoad, axles: readonly Axle[], carriage: AxleModel | undefined): Standing {
  const total = totalOf(burden, axles);
  const base = { total, centroid: centroidOf(total) };
  if (!carriage) return { ...base, axlesKg: [], leftKg: [], rightKg: [] };
  const afoot = carriage.lifted.size === 0;
  const moved = afoot ? burden.placed : total;
  const added = reactions(carriage, moved);
  const axlesKg = added.map((kg, i) => kg + (afoot ? (burden.weighed.axlesKg[i] as number) : 0));
  const sum = total.massKg === 0 ? 1 : total.massKg;
  const ends = axlesKg.map((kg, i) => {
    const turn = (afoot ? (burden.weighed.turnKgMm[i] as number) : 0) + (moved.yKgMm * kg) / sum;
    return endsOf(kg, turn, (axles[i] as Axle).trackMm);
  });
  return { ...base, axlesKg, leftKg: ends.map((end) => end?.[0]), rightKg: ends.map((end) => end?.[1]) };
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

export const minus = (burden: VehicleLoad, load: Load): VehicleLoad => carrying(burden, times(load, -1));
