import type { Axle, AxleReading, Instrument } from '../../records/index.js';
import { NO_LOAD } from './load.js';
import { ofResolution, rectangular, type UncertaintySource } from './uncertainty.js';
import { loadOfWeighed, nothingWeighed, placedOn, type VehicleLoad, type Weighed } from './vehicle-load.js';

/** A scale's step and its tolerance, relative to the reading or in kg. */
export interface ScaleUncertainty {
  readonly resolutionKg: number;
  readonly relative: number;
  readonly absoluteKg: number;
}

/** A scale that is not on record: 50 kg steps and 0.5 %. Common practice, no source. */
const UNKNOWN_SCALE: ScaleUncertainty = { resolutionKg: 50, relative: 0.005, absoluteKg: 0 };
/** Bare chassis, weighed somewhere or copied from its papers: ± 1 % of each axle. Common practice, no source. */
export const BARE_CHASSIS: ScaleUncertainty = { resolutionKg: 0, relative: 0.01, absoluteKg: 0 };

/** What the record of an instrument says of its readings; what it does not say is that of an unknown scale. */
export function scaleUncertainty(instrument: Instrument | undefined): ScaleUncertainty {
  if (!instrument) return UNKNOWN_SCALE;
  const { resolution, tolerance } = instrument;
  const resolutionKg = resolution?.dimension === 'mass' ? resolution.value : UNKNOWN_SCALE.resolutionKg;
  if (tolerance?.dimension === 'mass') return { resolutionKg, relative: 0, absoluteKg: tolerance.value };
  return {
    resolutionKg,
    relative: tolerance?.dimension === 'fraction' ? tolerance.value : UNKNOWN_SCALE.relative,
    absoluteKg: 0,
  };
}

/** Standard uncertainty of one reading, kg: step and tolerance, root sum of squares. */
export const uOfReading = (kg: number, doubt: ScaleUncertainty): number =>
  Math.hypot(ofResolution(doubt.resolutionKg), rectangular(doubt.absoluteKg + doubt.relative * Math.abs(kg)));

/**
 * Steps fall anew at each reading; the tolerance is one and the same error of the scale at every axle, so it adds up in the total.
 */
export function scaleSources(
  name: string,
  doubt: ScaleUncertainty,
  axles: readonly Axle[],
  readings: Readonly<Record<string, AxleReading>>,
  lifted: ReadonlySet<string> = new Set(),
): readonly UncertaintySource[] {
  const kgOf = (axle: Axle): number => readings[axle.id]?.totalKg ?? 0;
  const on = (axlesKg: readonly number[]): VehicleLoad => asVehicleLoad({ ...nothingWeighed(axles), axlesKg }, axles, lifted);
  const steps = axles.flatMap((axle, at) => {
    const reading = readings[axle.id];
    if (!reading || doubt.resolutionKg === 0) return [];
    const pads = reading.leftKg !== undefined && reading.rightKg !== undefined ? Math.SQRT2 : 1;
    const u = ofResolution(doubt.resolutionKg) * pads;
    return [{ name: `${name}: resolution`, what: on(axles.map((_, i) => (i === at ? u : 0))) }];
  });
  const tolerance = axles.map((axle) =>
    rectangular(doubt.absoluteKg * (readings[axle.id] ? 1 : 0) + doubt.relative * kgOf(axle)),
  );
  return [...steps, { name: `${name}: tolerance`, what: on(tolerance) }];
}

/** Weighed figures keep to their axle, but for those taken with an axle lifted: they must be handed down anew. */
export function asVehicleLoad(
  weighed: Weighed,
  axles: readonly Axle[],
  lifted: ReadonlySet<string>,
  heightKgMm = 0,
): VehicleLoad {
  if (lifted.size > 0) return placedOn(axles, loadOfWeighed(weighed, axles, heightKgMm));
  return { weighed, placed: NO_LOAD, heightKgMm };
}
