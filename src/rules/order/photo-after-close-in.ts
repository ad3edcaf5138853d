import { concealed } from '../../query/concealment.js';
import { CONCEALED_RUN } from '../example-records.js';
import type { Rule } from '../rule.js';
import { evidenceOf, firstTooLate, lineName, photoDay } from './evidence.js';

export const photoAfterCloseIn: Rule = {
  name: 'order.photo-after-close-in',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A concealed run or joint whose every photo was taken after the panel that closes it went on.',
  why: 'A photo of a closed panel shows nothing of what is behind it, and a late date says that the record was made up afterwards.',
  source: 'common practice, no source',
  examples: {
    given: `
${CONCEALED_RUN}
# pictures
shells/X-1/photos/a.jpg: {sha256: ab}
# photos/photos.yaml
`,
    fails: `
- {id: P-1, file: a.jpg, of: [DC-1/1], taken: 2026-04-23}
`,
    passes: `
- {id: P-1, file: a.jpg, of: [DC-1/1], taken: 2026-04-17}
`,
  },
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
          message: `${lineName(item)} was first photographed on ${late} (${photo.id}), expected on or before ${date}, when ${panel} closed it in: open it and photograph it, or decide it in findings.yaml`,
          ids: [item.record.id, photo.id, panel],
          place: photo.source.place('taken'),
        } as const,
      ];
    });
  },
};
