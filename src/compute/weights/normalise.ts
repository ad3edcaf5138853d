import type { Model } from '../../model/shell.js';
import type { Axle, Condition, Ticket } from '../../records/index.js';
import type { MassItem } from '../takeoff/types.js';
import { calibrationLapse } from '../verdicts/calibration.js';
import { type AxleModel, axleModelOf } from './axle-reactions.js';
import { type BuiltItem, builtBy, itemSources, loadOfItem } from './built.js';
import { conditionDifferences, fuelUncertainty, loadOf } from './differences.js';
import { NO_LOAD, sumOf } from './load.js';
import { loadShareSources } from './load-share.js';
import { asVehicleLoad, BARE_CHASSIS, type ScaleUncertainty, scaleSources, scaleUncertainty } from './scale.js';
import { rectangular, sourceOfLoad, type UncertaintySource } from './uncertainty.js';
import { carrying, minus, solveAxleLoads, turnOf, type VehicleLoad, type Weighed } from './vehicle-load.js';

/** The vehicle in the unladen condition: full fuel and operating fluids, no water, nobody, nothing aboard. */
export interface Unladen {
  readonly vehicleLoad: VehicleLoad;
  readonly sources: readonly UncertaintySource[];
}

export type Items = ReadonlyMap<string, BuiltItem>;

/**
 * The bare chassis as it came, brought to full fuel and all axles down. Nothing where it is not on record for every axle that stood on
 * the scale.
 */
export function bareUnladen(model: Model, items: Items): Unladen | undefined {
  const { axles, bare } = model.shell.chassis;
  if (!bare) return undefined;
  const lifted = liftedIn(bare.condition);
  if (axles.length === 0 || axles.some((axle) => !bare.readings[axle.id] && !lifted.has(axle.id))) return undefined;
  const weighed = weighedOf(model, bare.readings);
  const inIt = conditionDifferences(model, bare.condition, items, 'empty');
  const vehicleLoad = minus(asVehicleLoad(weighed, axles, lifted), loadOf(inIt));
  const sources = [
    ...scaleSources('bare chassis', BARE_CHASSIS, axles, bare.readings, lifted),
    ...inIt.flatMap((one) => one.sources),
    ...(lifted.size > 0 ? loadShareSources(axles, solveAxleLoads(vehicleLoad, axles, carriageOf(axles)).axlesKg) : []),
    ...bareSideSources(axles, bare.readings),
  ];
  return { vehicleLoad, sources };
}

const carriageOf = (axles: readonly Axle[]): AxleModel | undefined => {
  const found = axleModelOf(axles);
  return 'axleModel' in found ? found.axleModel : undefined;
};

/** Centre of a bare chassis to either side where its ends were not weighed: ± 50 mm. Common practice, no source. */
const BARE_SIDE_HALF_WIDTH_MM = 50;

function bareSideSources(axles: readonly Axle[], readings: Ticket['readings']): readonly UncertaintySource[] {
  const massKg = axles.reduce((sum, axle) => {
    const reading = readings[axle.id];
    return sum + (reading && turnOf(reading, axle.trackMm) === undefined ? reading.totalKg : 0);
  }, 0);
  if (massKg === 0) return [];
  const yKgMm = massKg * rectangular(BARE_SIDE_HALF_WIDTH_MM);
  return [sourceOfLoad('bare chassis: left to right, not weighed', axles, { ...NO_LOAD, yKgMm })];
}

/** Bare chassis and everything of a list, by statics. */
export function predictedUnladen(bare: Unladen | undefined, list: readonly MassItem[]): Unladen | undefined {
  if (!bare) return undefined;
  let sources: readonly UncertaintySource[] | undefined;
  return {
    vehicleLoad: carrying(bare.vehicleLoad, sumOf(list.map(loadOfItem))),
    // Most that is predicted is asked for its mass alone.
    get sources() {
      sources ??= [...bare.sources, ...itemSources(list)];
      return sources;
    },
  };
}

/** A scale ticket read as a survey of the vehicle. */
export interface Survey {
  readonly ticket: Ticket;
  readonly reason?: string;
  readonly lapse?: string;
  readonly lifted: ReadonlySet<string>;
  readonly weighed: Weighed;
  readonly asWeighed: Unladen;
  readonly scale: ScaleUncertainty;
  /** What is not known of the tanks, the people and the things aboard. */
  readonly aboard: readonly UncertaintySource[];
  /** The same vehicle brought to unladen; nothing where its condition is not known. */
  readonly unladen?: Unladen;
  readonly predicted?: Unladen;
}

/**
 * Brings a ticket to the unladen condition: what was in the tanks, on the seats and aboard is taken off, what was missing is put
 * on, each by its own position and not as a lump.
 * Worked: 14,300 kg at 4.20 m with 300 kg of water at 5.00 m and a driver of 80 kg at 0.40 m is 13,920 kg at 4.2046 m unladen.
 */
export function survey(model: Model, ticket: Ticket, items: Items, bare: Unladen | undefined, axleModel?: AxleModel): Survey {
  const { axles } = model.shell.chassis;
  const { condition } = ticket;
  const instrument = ticket.scale === undefined ? undefined : model.library.instruments.get(ticket.scale);
  const built = [...items.values()].filter(builtBy(model, ticket));
  const builtIds = new Map(built.map((item) => [item.id, item]));
  const predicted = predictedUnladen(bare, built);
  const inIt = condition ? conditionDifferences(model, condition, builtIds, 'empty') : [];
  const lifted = liftedIn(condition);
  const guess = predicted && solveAxleLoads(carrying(predicted.vehicleLoad, loadOf(inIt)), axles, axleModel);
  const turns = guess?.axlesKg.map((kg, i) => lateralTurn(kg, guess.rightKg[i], axles[i]?.trackMm));
  const weighed = weighedOf(model, ticket.readings, turns);
  const heightKgMm = guess?.total.zKgMm ?? 0;
  const doubt = scaleUncertainty(instrument);
  const scale = scaleSources(`scale of ${ticket.id}`, doubt, axles, ticket.readings, lifted);
  const aboard = inIt.flatMap((one) => one.sources);
  const vehicleLoad = asVehicleLoad(weighed, axles, lifted, heightKgMm);
  const lapse = instrument && calibrationLapse(instrument, ticket.date);
  const reason = unverified(model, ticket, lifted, lapse);
  const unladen =
    condition && readingsComplete(model, ticket, lifted)
      ? { vehicleLoad: minus(vehicleLoad, loadOf(inIt)), sources: [...scale, ...aboard] }
      : undefined;
  return {
    ticket,
    lifted,
    weighed,
    asWeighed: { vehicleLoad, sources: scale },
    scale: doubt,
    aboard,
    ...(reason === undefined ? {} : { reason }),
    ...(lapse === undefined ? {} : { lapse }),
    ...(unladen ? { unladen } : {}),
    ...(predicted ? { predicted } : {}),
  };
}

export const liftedIn = (condition: Condition | undefined): ReadonlySet<string> =>
  new Set(Object.entries(condition?.lifted ?? {}).flatMap(([axle, state]) => (state === 'up' ? [axle] : [])));

function weighedOf(model: Model, readings: Ticket['readings'], turns?: readonly number[]): Weighed {
  const { axles } = model.shell.chassis;
  return {
    axlesKg: axles.map((axle) => readings[axle.id]?.totalKg ?? 0),
    turnKgMm: axles.map((axle, i) => turnOf(readings[axle.id], axle.trackMm) ?? turns?.[i] ?? 0),
  };
}

const lateralTurn = (kg: number, rightKg: number | undefined, trackMm: number | undefined): number =>
  rightKg === undefined || trackMm === undefined ? 0 : (rightKg - kg / 2) * trackMm;

const readingsComplete = ({ shell }: Model, ticket: Ticket, lifted: ReadonlySet<string>): boolean =>
  shell.chassis.axles.length > 0 && shell.chassis.axles.every((axle) => ticket.readings[axle.id] || lifted.has(axle.id));

function unverified(model: Model, ticket: Ticket, lifted: ReadonlySet<string>, lapse: string | undefined): string | undefined {
  if (!ticket.condition) return 'it does not say in what condition the vehicle was weighed';
  if (!readingsComplete(model, ticket, lifted)) {
    const missing = model.shell.chassis.axles.filter((axle) => !ticket.readings[axle.id] && !lifted.has(axle.id));
    return missing.length > 0
      ? `it has no reading for axle ${missing.map((axle) => axle.id).join(', ')}`
      : 'no axles are on record';
  }
  return (
    fuelUncertainty(model, ticket.condition) ?? (lapse === undefined ? undefined : `its scale was out of calibration: ${lapse}`)
  );
}
