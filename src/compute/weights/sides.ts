import type { Axle } from '../../records/index.js';
import { NO_LOAD } from './load.js';
import { rectangular, rootSumOfSquares, type UncertaintySource } from './uncertainty.js';
import { nothingWeighed, type SharedAs } from './vehicle-load.js';

/** The moment to the right on each axle as the records have it, kg·mm, and what the whole is uncertain by: standard, by cause. */
export interface SidePrior {
  readonly turnKgMm: readonly number[];
  readonly causes: readonly { readonly name: string; readonly kgMm: number }[];
}

/** The load on an axle is centred where that of the whole vehicle is, ± 25 mm: roll stiffness is not on record. Common practice, no source. */
const AXLE_SIDE_HALF_WIDTH_MM = 25;
/** A vehicle of whose sides nothing is known is centred on its centre line, ± 50 mm. Common practice, no source. */
const VEHICLE_SIDE_HALF_WIDTH_MM = 50;

export interface AxleSides {
  /** Moment to the right on each axle, kg·mm. */
  readonly turnKgMm: readonly number[];
  /** The moments that a change of the weighed sides (half differences, kg) makes. */
  turnsFrom(sidesKg: readonly number[]): readonly number[];
  /** What is not known of the moments on axles whose ends were not weighed. */
  readonly sources: readonly UncertaintySource[];
}

/**
 * The moment to a side on every axle. Where ends were weighed it is as weighed. The others have it as the records do, and share in proportion to
 * their load what the whole vehicle has more or less; that whole is the mean, by their uncertainties, of what the records have and of what the
 * weighed ends tell of it.
 */
export function completeSides(
  sidesKg: readonly (number | undefined)[],
  axles: readonly Axle[],
  { axlesKg, load }: SharedAs,
  prior: SidePrior | undefined,
): AxleSides {
  const track = (i: number): number => axles[i]?.trackMm ?? 0;
  const share = (i: number): number => (axlesKg[i] as number) / (load.massKg || 1);
  const all = axles.map((_, i) => i);
  const weighed = all.filter((i) => sidesKg[i] !== undefined);
  const others = all.filter((i) => sidesKg[i] === undefined);
  const ofWeighed = weighed.reduce((sum, i) => sum + share(i), 0);
  const ofOthers = others.reduce((sum, i) => sum + share(i), 0) || 1;
  const blank = 'left to right, not weighed';
  const { turnKgMm, causes } = prior ?? {
    turnKgMm: all.map(() => 0),
    causes: [{ name: blank, kgMm: load.massKg * rectangular(VEHICLE_SIDE_HALF_WIDTH_MM) }],
  };
  const uOf = (i: number): number => share(i) * load.massKg * rectangular(AXLE_SIDE_HALF_WIDTH_MM);
  const uPrior = rootSumOfSquares(causes.map((one) => one.kgMm));
  const uWeighed = weighed.length === 0 ? Number.POSITIVE_INFINITY : rootSumOfSquares(weighed.map(uOf)) / ofWeighed;
  // Nothing to doubt on either side: the scale goes first.
  const byRecords = weighed.length === 0 ? 1 : 1 / (1 + (uPrior / uWeighed) ** 2);

  // Everything is a change from what the records have: of the weighed axles, and of the whole.
  const changes = (ofEnds: readonly number[], whole: number, slip = 0): readonly number[] => {
    const sum = weighed.reduce((all0, i) => all0 + (ofEnds[i] as number), 0);
    const told = weighed.length === 0 ? 0 : (sum + slip) / ofWeighed;
    const left = byRecords * whole + (1 - byRecords) * told - sum;
    return all.map((i) => (others.includes(i) ? (left * share(i)) / ofOthers : (ofEnds[i] as number)));
  };
  const none = all.map(() => 0);
  const source = (name: string, turnsKgMm: readonly number[]): UncertaintySource => ({
    name,
    what: { weighed: { ...nothingWeighed(axles), turnKgMm: turnsKgMm }, placed: NO_LOAD, heightKgMm: 0 },
  });
  const roll = 'how a side load is shared between axles';
  const found = all.map((i) => (sidesKg[i] === undefined ? 0 : sidesKg[i] * track(i) - (turnKgMm[i] as number)));
  return {
    turnKgMm: changes(found, 0).map((kgMm, i) => kgMm + (turnKgMm[i] as number)),
    turnsFrom: (change) =>
      changes(
        all.map((i) => (weighed.includes(i) ? (change[i] as number) * track(i) : 0)),
        0,
      ),
    sources:
      others.length === 0
        ? []
        : [
            ...causes.map(({ name, kgMm }) => source(name, changes(none, kgMm))),
            ...weighed.map((i) => source(roll, changes(none, 0, uOf(i)))),
            ...others.map((at) =>
              source(
                roll,
                all.map((i) => (i === at ? uOf(i) : 0)),
              ),
            ),
          ],
  };
}
