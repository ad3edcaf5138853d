import { wheelCount } from '../../compute/weights/ratings.js';
import type { AxleLoad, AxleRating, ConditionFigure, TicketFigure } from '../../compute/weights/types.js';
import type { Place } from '../../finding.js';
import type { Model } from '../../model/shell.js';
import { mass, percent } from '../../quantity/format.js';
import type { axle } from '../../records/axle.js';
import type { Ticket } from '../../records/index.js';
import type { ticket } from '../../records/ticket.js';
import type { KeysOf, PathTo } from '../../records/types.js';

/** Where an axle's field was typed; the chassis where the axle's own place is not known. */
export function axlePlace({ shell }: Model, id: string, ...path: PathTo<KeysOf<typeof axle.fields>>): Place {
  const source = shell.chassis.axles.find((axle) => axle.id === id)?.source;
  return source ? source.place(...path) : shell.source.place('chassis', 'axles');
}

export const ticketOf = ({ shell }: Model, id: string): Ticket | undefined => shell.tickets.find((ticket) => ticket.id === id);

export const ticketPlace = (model: Model, id: string, ...path: PathTo<KeysOf<typeof ticket.fields>>): Place =>
  ticketOf(model, id)?.source.place(...path) ?? model.shell.source.place();

/** One axle in one condition. */
export interface AxleCase {
  readonly condition: ConditionFigure;
  readonly load: AxleLoad;
}

/** Every condition that a test picks, for one axle, least margin first. */
export function casesOf(
  conditions: readonly ConditionFigure[],
  axle: string,
  picked: (one: AxleCase) => boolean,
): readonly AxleCase[] {
  return conditions
    .flatMap((condition) => condition.axles.filter((load) => load.axle === axle).map((load) => ({ condition, load })))
    .filter(picked)
    .sort((a, b) => (a.load.marginKg ?? 0) - (b.load.marginKg ?? 0));
}

/** `; also in water, waste` for all but the first. */
export const alsoIn = (names: readonly string[]): string => (names.length > 1 ? `; also in ${names.slice(1).join(', ')}` : '');

const LIMIT_WORDS = { gawr: 'its GAWR', tyres: 'its tyres', wheels: 'its wheels', suspension: 'its suspension' } as const;

/** `its GAWR`; of wheels what was rated, too. */
export function limitWord({ axle: id, limitedBy = 'gawr' }: AxleRating, { shell, shop }: Model): string {
  const axle = shell.chassis.axles.find((one) => one.id === id);
  if (limitedBy !== 'wheels' || axle?.wheelsKg === undefined) return LIMIT_WORDS[limitedBy];
  const rating = mass(axle.wheelsKg, shop.units);
  return axle.wheelsBy === 'axle' ? `its wheels (${rating} for the axle)` : `its wheels (${wheelCount(axle)} of ${rating})`;
}

export const kg = (model: Model, value: number): string => mass(value, model.shop.units);
export const share = (fraction: number): string => percent(fraction, 1);

/** Id and date, as a reader looks for it. */
export const ticketName = (ticket: Pick<TicketFigure, 'id' | 'date'>): string => `Ticket ${ticket.id} of ${ticket.date}`;
