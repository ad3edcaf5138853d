import { concealed } from '../../query/concealment.js';
import type { Rule } from '../rule.js';
import { evidenceOf, firstTooLate, nameOf, photoDay } from './evidence.js';

export const photoAfterCloseIn: Rule = {
  name: 'order.photo-after-close-in',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A concealed run or joint whose every photo was taken after the panel that closes it went on.',
  why: 'A photo of a closed panel shows nothing of what is behind it, and a late date says that the record was made up afterwards.',
  source: 'common practice, no source',
  check({ model }) {
    return concealed(model).flatMap((item) => {
      if (!item.closed) return [];
      const { date, panel } = item.closed;
      const { photos } = evidenceOf(item, model);
      const late = firstTooLate(photos.map(photoDay), date);
      const photo = photos.find((one) => late !== undefined && photoDay(one) === late);
      if (!photo) return [];
      return [
        {
          message: `${nameOf(item)} was first photographed on ${late} (${photo.id}), expected on or before ${date}, when ${panel} closed it in: open it and photograph it, or decide it in findings.yaml`,
          ids: [item.record.id, photo.id, panel],
          place: photo.source.place('taken'),
        } as const,
      ];
    });
  },
};
