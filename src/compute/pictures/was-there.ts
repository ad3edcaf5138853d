import type { Model } from '../../model/shell.js';
import { dayOf } from '../../quantity/day.js';
import type { Panel, Photo, RecordBase } from '../../records/index.js';

/**
 * Whether a record was in the coach when a photo was taken: by its day (a panel's own, else that of its adhesive), else by its stage
 * against the photo's. Where neither is on record it counts as there: it may hide what is behind it.
 */
export function wasThere({ library }: Model, photo: Photo): (record: RecordBase & Partial<Pick<Panel, 'fixing'>>) => boolean {
  const taken = dayOf(photo.taken ?? photo.date);
  const stages = library.stages.map(({ id }) => id);
  const then = photo.stage === undefined ? -1 : stages.indexOf(photo.stage);
  return (record) => {
    if (record.planned) return false;
    const day = dayOf(record.date ?? record.fixing?.applied);
    if (day !== undefined && taken !== undefined) return day <= taken;
    const stage = record.stage === undefined ? -1 : stages.indexOf(record.stage);
    return then < 0 || stage < 0 || stage <= then;
  };
}
