import type { Vec3 } from '../../geometry/vector.js';

/** A mass held by its first moments about the datum, so that sums are exact: kg and kg·mm. */
export interface Load {
  readonly massKg: number;
  readonly xKgMm: number;
  readonly yKgMm: number;
  readonly zKgMm: number;
}

export const NO_LOAD: Load = { massKg: 0, xKgMm: 0, yKgMm: 0, zKgMm: 0 };

export const loadAt = (massKg: number, at: Vec3): Load => ({
  massKg,
  xKgMm: massKg * at[0],
  yKgMm: massKg * at[1],
  zKgMm: massKg * at[2],
});

export const plus = (a: Load, b: Load): Load => ({
  massKg: a.massKg + b.massKg,
  xKgMm: a.xKgMm + b.xKgMm,
  yKgMm: a.yKgMm + b.yKgMm,
  zKgMm: a.zKgMm + b.zKgMm,
});

export const times = (load: Load, factor: number): Load => ({
  massKg: load.massKg * factor,
  xKgMm: load.xKgMm * factor,
  yKgMm: load.yKgMm * factor,
  zKgMm: load.zKgMm * factor,
});

/** Thousands of items are summed for every ticket and stage: in place, in the order given. */
export function sumOf(loads: Iterable<Load>): Load {
  let [massKg, xKgMm, yKgMm, zKgMm] = [0, 0, 0, 0];
  for (const load of loads) {
    massKg += load.massKg;
    xKgMm += load.xKgMm;
    yKgMm += load.yKgMm;
    zKgMm += load.zKgMm;
  }
  return { massKg, xKgMm, yKgMm, zKgMm };
}

/** Where a load is centred, mm; the datum where there is no mass. */
export const centroidOf = ({ massKg, xKgMm, yKgMm, zKgMm }: Load): Vec3 =>
  massKg === 0 ? [0, 0, 0] : [xKgMm / massKg, yKgMm / massKg, zKgMm / massKg];
