import type { Model } from '../../model/shell.js';
import type { MassBasis } from '../../records/index.js';
import type { MassItem } from '../takeoff/types.js';
import { type AxleModel, reactions } from './axle-reactions.js';
import { type BuiltItem, itemSources, loadOfItem } from './built.js';
import { type Load, sumOf, times } from './load.js';
import { predictedUnladen, type Unladen } from './normalise.js';
import { massOf } from './tickets.js';
import type { Forecast, TicketFigure, Weights } from './types.js';
import { COVERAGE, combine } from './uncertainty.js';
import { carrying, solveAxleLoads } from './vehicle-load.js';

/**
 * What a mass that has not been over a scale may still grow by, by its basis. Common practice, no source: growth through a build
 * is the rule and shrinks with what is known (compare SAWE recommended practice on mass properties control).
 */
export const ALLOWANCE: Readonly<Record<MassBasis, number>> = { weighed: 0, calculated: 0.03, catalogue: 0.05, estimated: 0.15 };

/** Mass at the end of each stage, unladen, beside the newest verified ticket of that stage. Items of no stage count from the start. */
export function growth(
  model: Model,
  bare: Unladen | undefined,
  items: readonly BuiltItem[],
  tickets: readonly TicketFigure[],
): Weights['growth'] {
  const { axles } = model.shell.chassis;
  return model.library.stages.map((stage, order) => {
    const there = items.filter((item) => (item.order ?? 0) <= order);
    const predicted = predictedUnladen(bare, there);
    const ticket = tickets.filter((one) => one.stage === stage.id && one.verified).sort((a, b) => (a.date < b.date ? 1 : -1))[0];
    return {
      stage: stage.id,
      predictedKg: predicted ? massOf(predicted, axles) : sumOf(there.map(loadOfItem)).massKg,
      ...(ticket?.normalisedKg === undefined ? {} : { measuredKg: ticket.normalisedKg, uncertaintyKg: ticket.uncertaintyKg }),
    };
  });
}

/** The unladen vehicle with what is planned and not in it yet: for the forecast alone. */
export const withPlanned = (unladen: Unladen, planned: readonly MassItem[]): Unladen =>
  planned.length === 0
    ? unladen
    : {
        vehicleLoad: carrying(unladen.vehicleLoad, sumOf(planned.map(loadOfItem))),
        sources: [...unladen.sources, ...itemSources(planned)],
      };

/** The finished vehicle, unladen: what is known, with an allowance on what has not been weighed, and the band about both. */
export function forecast(
  unladen: Unladen,
  notWeighed: readonly MassItem[],
  model: Model,
  axleModel: AxleModel | undefined,
): Forecast {
  const { axles } = model.shell.chassis;
  const { axlesKg } = solveAxleLoads(unladen.vehicleLoad, axles, axleModel);
  const allowance: Load = sumOf(notWeighed.map((item) => times(loadOfItem(item), ALLOWANCE[item.basis])));
  const expanded = combine(unladen.sources, axles, axleModel);
  const totalKg = massOf(unladen, axles) + allowance.massKg;
  // An allowance is as likely spent as not: it widens the band by its own size, taken as two standard deviations.
  const band = Math.hypot(expanded.totalKg, (COVERAGE * allowance.massKg) / 2);
  const shares = axleModel ? reactions(axleModel, allowance) : [];
  return {
    allowanceKg: allowance.massKg,
    totalKg,
    lowKg: totalKg - band,
    highKg: totalKg + band,
    axles: axlesKg.map((kg, i) => {
      const loadKg = kg + (shares[i] ?? 0);
      const spread = Math.hypot(expanded.axlesKg[i] ?? 0, shares[i] ?? 0);
      return { axle: axles[i]?.id ?? '', loadKg, lowKg: loadKg - spread, highKg: loadKg + spread };
    }),
  };
}
