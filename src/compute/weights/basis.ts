import type { Model } from '../../model/shell.js';
import type { MassItem } from '../takeoff/types.js';
import { builtBy, itemSources, loadOfItem } from './built.js';
import { carrying, placedOn } from './burden.js';
import { sumOf, times } from './load.js';
import { type Items, predictedUnladen, type Survey, type Unladen } from './normalise.js';
import { fullTank, unladenLevel } from './tanks.js';
import type { Weights } from './types.js';

/** What the loading conditions start from. */
export interface Basis {
  readonly kind: Weights['basis'];
  readonly unladen: Unladen;
  readonly survey?: Survey;
  /** Items that the unladen figure takes from the records and not from a scale. */
  readonly notWeighed: readonly MassItem[];
}

/**
 * The newest verified ticket brought to unladen, with what the records put on since; without one, the bare chassis with all that
 * the take-off has; without that, the recorded shell alone, which nothing can be judged by.
 */
export function chooseBasis(model: Model, items: Items, bare: Unladen | undefined, newest: Survey | undefined): Basis {
  const all = [...items.values()];
  if (newest?.unladen) {
    const built = builtBy(model, newest.ticket);
    const since = all.filter((item) => !built(item));
    const burden = carrying(newest.unladen.burden, sumOf(since.map(loadOfItem)));
    const sources = [...newest.unladen.sources, ...itemSources(since)];
    return { kind: 'ticket', unladen: { burden, sources }, survey: newest, notWeighed: since };
  }
  const predicted = predictedUnladen(bare, all);
  if (predicted) return { kind: 'prediction', unladen: predicted, notWeighed: all };
  const fluids = sumOf(model.shell.tanks.map((tank) => times(fullTank(tank), unladenLevel(tank))));
  const alone = placedOn(model.shell.chassis.axles, sumOf([...all.map(loadOfItem), fluids]));
  return { kind: 'none', unladen: { burden: alone, sources: itemSources(all) }, notWeighed: all };
}
