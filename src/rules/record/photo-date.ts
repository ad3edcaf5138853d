import { daysBetween } from '../../quantity/day.js';
import { number } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const photoDate: Rule = {
  name: 'record.photo-date',
  severity: 'note',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A photo whose camera says another day than its record, by more than the shop allows for late entries.',
  why: 'One of the two dates is wrong, and what the photo proves rests on it.',
  source: 'limit `late_entry` in shop.yaml; date by EXIF; common practice, no source',
  examples: {
    given: `
# photos/photos.yaml
- {id: P-1, file: a.jpg, of: [X-1], taken: 2026-04-09}
# pictures
`,
    fails: `
shells/X-1/photos/a.jpg: {sha256: aa, taken: 2026-05-20}
`,
    passes: `
shells/X-1/photos/a.jpg: {sha256: aa, taken: 2026-04-08}
`,
  },
  check({ model: { shell, shop }, outside }) {
    return shell.photos.flatMap((photo) => {
      const camera = outside?.photos?.get(`shells/${shell.id}/photos/${photo.file}`)?.taken;
      const limit = shop.limits.lateEntryDays;
      if (camera === undefined || photo.taken === undefined) return [];
      const days = Math.abs(daysBetween(photo.taken, camera));
      if (days <= limit) return [];
      return [
        {
          message: `Photo ${photo.id} was taken on ${photo.taken} by its record and on ${camera} by its camera, ${number(days)} days apart, expected at most ${number(limit)}: correct \`taken\`, or say in a \`note\` that the camera's clock was wrong`,
          ids: [photo.id],
          place: photo.source.place('taken'),
        } as const,
      ];
    });
  },
};
