import type { Model } from '../../model/shell.js';
import type { MassItem } from '../takeoff/types.js';
import type { AxleModel } from './axle-reactions.js';
import { builtBy, itemSources, loadOfItem } from './built.js';
import { type Estimate, estimate } from './estimate.js';
import { sumOf, times } from './load.js';
import { type Items, predictedUnladen, type Survey, type Unladen } from './normalise.js';
import { fullTank, unladenLevel } from './tanks.js';
import type { Weights } from './types.js';
import { carrying, placedOn, sharedByItself } from './vehicle-load.js';

/** What the loading conditions start from. */
export interface Basis {
  readonly kind: Weights['basis'];
  readonly unladen: Unladen;
  readonly survey?: Survey;
  /** Tickets reconciled for it, and those whose wheel ends are kept. */
  readonly estimate?: Estimate;
  /** Items that the unladen figure takes from the records and not from a scale. */
  readonly notWeighed: readonly MassItem[];
}

/**
 * The verified tickets of the newest state reconciled and brought to unladen, with what the records put on since; without one, the bare
 * chassis with all that the take-off has; without that, the recorded shell alone, which nothing can be judged by.
 */
export function chooseBasis(
  model: Model,
  items: Items,
  bare: Unladen | undefined,
  newest: Survey | undefined,
  surveys: readonly Survey[],
  axleModel: AxleModel | undefined,
): Basis {
  const { axles } = model.shell.chassis;
  const all = [...items.values()];
  const shared = (unladen: Unladen): Unladen => ({
    ...unladen,
    vehicleLoad: sharedByItself(unladen.vehicleLoad, axles, axleModel),
  });
  if (newest?.unladen) {
    const built = builtBy(model, newest.ticket);
    const since = all.filter((item) => !built(item));
    const found = estimate(model, surveys, newest, items, axleModel);
    const from = found?.unladen ?? newest.unladen;
    const vehicleLoad = carrying(from.vehicleLoad, sumOf(since.map(loadOfItem)));
    const sources = [...from.sources, ...itemSources(since)];
    const unladen = shared({ vehicleLoad, sources });
    return { kind: 'ticket', unladen, survey: newest, ...(found ? { estimate: found } : {}), notWeighed: since };
  }
  const predicted = predictedUnladen(bare, all);
  if (predicted) return { kind: 'prediction', unladen: shared(predicted), notWeighed: all };
  const fluids = sumOf(model.shell.tanks.map((tank) => times(fullTank(tank), unladenLevel(tank))));
  const alone = placedOn(axles, sumOf([...all.map(loadOfItem), fluids]));
  return { kind: 'none', unladen: shared({ vehicleLoad: alone, sources: itemSources(all) }), notWeighed: all };
}
