import type { Model } from '../../model/shell.js';
import type { Axle } from '../../records/index.js';
import type { AxleModel } from './axle-reactions.js';
import { builtBy } from './built.js';
import { plus, times } from './load.js';
import type { Items, Survey, Unladen } from './normalise.js';
import { reconcile } from './reconcile.js';
import type { TicketFigure } from './types.js';
import { combine } from './uncertainty.js';
import { nothingWeighed, solveAxleLoads, totalOf } from './vehicle-load.js';

type ByAxle = Readonly<Record<string, number>>;

/** A ticket beside the prediction, axle by axle, with what is unexplained and where. */
export function ticketFigure(model: Model, one: Survey, items: Items, axleModel: AxleModel | undefined): TicketFigure {
  const { axles } = model.shell.chassis;
  const { ticket, unladen, predicted } = one;
  const built = builtBy(model, ticket);
  const byAxle = (kg: readonly number[]): ByAxle => Object.fromEntries(kg.map((value, i) => [(axles[i] as Axle).id, value]));
  const normalised = unladen ? solveAxleLoads(unladen.vehicleLoad, axles, axleModel) : undefined;
  const expected = predicted ? solveAxleLoads(predicted.vehicleLoad, axles, axleModel) : undefined;
  const gap = unladen && predicted ? difference(unladen, predicted, axles) : undefined;
  const residual = gap && solveAxleLoads(gap.vehicleLoad, axles, axleModel);
  const residualKg = residual?.total.massKg ?? 0;
  const residualUncertaintyKg = gap && combine(gap.sources, axles, axleModel).totalKg;
  const uncertaintyKg = combine((unladen ?? one.asWeighed).sources, axles, axleModel).totalKg;
  const reconciled = reconcile(model, ticket, one.lifted);
  const readings = axles
    .filter((axle) => ticket.readings[axle.id])
    .map((axle) => [axle.id, ticket.readings[axle.id]?.totalKg ?? 0] as const);
  const placeable = residual && Math.abs(residualKg) > uncertaintyKg && Math.abs(residualKg) > 1;
  return {
    id: ticket.id,
    date: ticket.date,
    ...(ticket.stage === undefined ? {} : { stage: ticket.stage }),
    verified: one.reason === undefined,
    ...(one.reason === undefined ? {} : { reason: one.reason }),
    ...(one.lapse === undefined ? {} : { calibrationLapse: one.lapse }),
    asWeighed: Object.fromEntries(readings),
    normalised: byAxle(normalised?.axlesKg ?? []),
    predicted: byAxle(expected?.axlesKg ?? []),
    residual: byAxle(residual?.axlesKg ?? []),
    totalKg: readings.length > 0 ? readings.reduce((sum, [, kg]) => sum + kg, 0) : (ticket.grossKg ?? 0),
    ...(normalised ? { normalisedKg: normalised.total.massKg } : {}),
    residualKg,
    ...(placeable ? { residualXMm: residual.total.xKgMm / residualKg } : {}),
    uncertaintyKg,
    ...(residualUncertaintyKg === undefined ? {} : { residualUncertaintyKg }),
    addedSinceKg: [...items.values()].reduce((sum, item) => sum + (built(item) ? 0 : item.massKg), 0),
    ...(reconciled ? { reconciled } : {}),
  };
}

/** What was weighed less what was predicted, as a load of its own: its mass and its place along the vehicle, no more. */
function difference(unladen: Unladen, predicted: Unladen, axles: readonly Axle[]): Unladen {
  const [a, b] = [unladen.vehicleLoad, predicted.vehicleLoad];
  const axlesKg = a.weighed.axlesKg.map((kg, i) => kg - (b.weighed.axlesKg[i] as number));
  return {
    vehicleLoad: {
      weighed: { ...nothingWeighed(axles), axlesKg },
      placed: plus(a.placed, times(b.placed, -1)),
      heightKgMm: 0,
    },
    sources: [...unladen.sources, ...predicted.sources],
  };
}

/** The newest verified ticket: of the latest stage, then of the latest date. */
export function newestVerified(
  surveys: readonly Survey[],
  order: (stage: string | undefined) => number | undefined,
): Survey | undefined {
  const verified = surveys.filter((one) => one.reason === undefined && one.unladen);
  return verified.reduce<Survey | undefined>((best, one) => {
    if (!best) return one;
    const [a, b] = [order(best.ticket.stage), order(one.ticket.stage)];
    if (a !== undefined && b !== undefined && a !== b) return b > a ? one : best;
    return one.ticket.date >= best.ticket.date ? one : best;
  }, undefined);
}

export const massOf = (unladen: Unladen, axles: readonly Axle[]): number => totalOf(unladen.vehicleLoad, axles).massKg;
