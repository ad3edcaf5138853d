import type { Model } from '../../model/shell.js';
import type { Basis } from './basis.js';
import { massOf } from './tickets.js';
import type { AxleRating } from './types.js';

/** What could not be computed and why, in sentences. `layout`: why the axle layout is not determined. */
export function problems(
  model: Model,
  basis: Basis,
  layout: string | undefined,
  ratings: readonly AxleRating[],
): readonly string[] {
  const { axles, bare, gvwrKg } = model.shell.chassis;
  if (axles.length === 0) return ['No axles are on record: axle loads and margins cannot be given. Add `chassis: axles:`'];
  const unread = bare ? axles.filter((axle) => !bare.readings[axle.id]) : [];
  const unrated = ratings.filter((one) => one.limitKg === undefined);
  const told: string[] = [];
  if (layout !== undefined) told.push(layout);
  if (!bare) told.push('The bare chassis is not on record: nothing can be predicted. Add `chassis: bare:` with its readings');
  if (unread.length > 0) {
    told.push(`The bare chassis has no reading for axle ${unread.map(({ id }) => id).join(', ')}: nothing can be predicted`);
  }
  if (unrated.length > 0) {
    const names = unrated.map(({ axle }) => axle).join(', ');
    told.push(`No rating on record for axle ${names}: its loads are given, but cannot be judged, and bays are not held to it`);
  }
  if (gvwrKg === undefined) told.push('No GVWR on record: totals cannot be judged and cargo capacity cannot be given');
  else if (basis.kind !== 'none' && massOf(basis.unladen, axles) > gvwrKg + 1e-6) {
    told.push('The unladen vehicle is heavier than its GVWR: there is no cargo capacity and no figure for a label');
  }
  return told;
}
