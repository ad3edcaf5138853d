import type { Model, Ticket } from '../../model/shell.js';
import type { RecordBase } from '../../model/source.js';
import type { MassItem } from '../takeoff/types.js';
import { type Load, loadAt } from './load.js';
import { type Source, sourceOfLoad } from './uncertainty.js';

/** Place of a stage in the build order; nothing for a stage that is not in the library. */
export function stageOrder({ library }: Model, stage: string | undefined): number | undefined {
  const at = library.stages.findIndex((one) => one.id === stage);
  return at < 0 ? undefined : at;
}

/** True where a record was on the vehicle when it was weighed: neither of a later stage nor of a later date. */
export function builtBy(model: Model, item: MassItem, ticket: Ticket): boolean {
  const [own, weighed] = [stageOrder(model, item.stage), stageOrder(model, ticket.stage)];
  if (own !== undefined && weighed !== undefined && own > weighed) return false;
  const date = dateOf(model, item.id);
  return date === undefined || date.slice(0, 10) <= ticket.date.slice(0, 10);
}

export const dateOf = (model: Model, id: string): string | undefined =>
  (model.shell.byId.get(id)?.record as RecordBase | undefined)?.date;

export const loadOfItem = (item: MassItem): Load => loadAt(item.massKg, item.centroid);

/** What is not known of items' masses and places, told by kind of figure. */
export function itemSources(model: Model, items: readonly MassItem[]): readonly Source[] {
  const { axles } = model.shell.chassis;
  return items.flatMap((item) => {
    const moment = item.massKg * item.uPositionMm;
    return [
      sourceOfLoad(`${item.basis} masses`, axles, loadAt(item.uMassKg, item.centroid)),
      sourceOfLoad('positions of items', axles, { massKg: 0, xKgMm: moment, yKgMm: 0, zKgMm: 0 }),
    ];
  });
}
