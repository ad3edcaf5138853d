import type { Model } from '../../model/shell.js';
import { dayOf } from '../../quantity/day.js';
import type { RecordBase, Ticket } from '../../records/index.js';
import type { MassItem } from '../takeoff/types.js';
import { type Load, loadAt } from './load.js';
import { spreadOf, type UncertaintySource } from './uncertainty.js';

/** Place of a stage in the build order; nothing for a stage that is not in the library. */
export function stageOrder({ library }: Model, stage: string | undefined): number | undefined {
  const at = library.stages.findIndex((one) => one.id === stage);
  return at < 0 ? undefined : at;
}

/** A mass item with when it came aboard, looked up once. */
export interface BuiltItem extends MassItem {
  /** Place of its stage in the build order. */
  readonly order?: number;
  /** Day of its record. */
  readonly day?: string;
}

export function whenBuilt(model: Model, items: readonly MassItem[]): ReadonlyMap<string, BuiltItem> {
  const orders = new Map(model.library.stages.map((stage, i) => [stage.id, i]));
  return new Map(
    items.map((item): [string, BuiltItem] => {
      const order = item.stage === undefined ? undefined : orders.get(item.stage);
      const day = dayOf(dateOf(model, item.id));
      return [item.id, { ...item, ...(order === undefined ? {} : { order }), ...(day === undefined ? {} : { day }) }];
    }),
  );
}

/** Those that were on the vehicle when it was weighed: neither of a later stage nor of a later date. */
export function builtBy(model: Model, ticket: Ticket): (item: BuiltItem) => boolean {
  const weighed = stageOrder(model, ticket.stage) ?? Number.POSITIVE_INFINITY;
  return (item) => (item.order ?? 0) <= weighed && (item.day === undefined || item.day <= ticket.date);
}

export const dateOf = (model: Model, id: string): string | undefined =>
  (model.shell.byId.get(id)?.record as RecordBase | undefined)?.date;

export const loadOfItem = (item: MassItem): Load => loadAt(item.massKg, item.centroid);

/** What is not known of items' masses and places, told by kind of figure. */
export function itemSources(items: readonly MassItem[]): readonly UncertaintySource[] {
  const byBasis = new Map<string, MassItem[]>();
  for (const item of items) {
    const same = byBasis.get(item.basis);
    if (same) same.push(item);
    else byBasis.set(item.basis, [item]);
  }
  const masses = [...byBasis].map(([basis, some]) => ({
    name: `${basis} masses`,
    what: spreadOf(some.map((item) => loadAt(item.uMassKg, item.centroid))),
  }));
  const places = spreadOf(
    items.flatMap((item) => {
      const kgMm = item.massKg * item.uPositionMm;
      return [
        { massKg: 0, xKgMm: kgMm },
        { massKg: 0, xKgMm: 0, yKgMm: kgMm },
      ];
    }),
  );
  return [...masses, { name: 'positions of items', what: places }];
}
