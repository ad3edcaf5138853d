import { smallLength } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const photoPointOff: Rule = {
  name: 'record.photo-point-off',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A record that a photo shows in another place than recorded, by the other points marked in the picture.',
  why: 'Either the place was typed wrong, or the point was: whoever drills by it will be as far off.',
  source:
    'projective geometry (Hartley and Zisserman, Multiple View Geometry, 2nd ed. 2003); limit `limits: {overlay}`, project default 20 mm',
  examples: {
    given: `
# pictures
shells/X-1/photos/a.jpg: {sha256: ab, picture: {widthPx: 1200, heightPx: 900}}
# photos/photos.yaml
`,
    fails: `
- {id: P-1, file: a.jpg, of: [X-1], taken: 2026-04-09,
   seen: [{at: [0 m, -1 m, 0 m], px: [100, 800]},
     {at: [2 m, -1 m, 0 m], px: [692, 615]},
     {at: [2 m, -1 m, 1.5 m], px: [692, 131]},
     {at: [0 m, -1 m, 1.5 m], px: [100, 170]},
     {at: [1 m, -1 m, 0.4 m], px: [435, 550]},
     {at: [0.4 m, -1 m, 1.1 m], px: [335, 319]},
     {at: [1.5 m, -1 m, 0.9 m], px: [571, 344]}]}
`,
    passes: `
- {id: P-1, file: a.jpg, of: [X-1], taken: 2026-04-09,
   seen: [{at: [0 m, -1 m, 0 m], px: [100, 800]},
     {at: [2 m, -1 m, 0 m], px: [692, 615]},
     {at: [2 m, -1 m, 1.5 m], px: [692, 131]},
     {at: [0 m, -1 m, 1.5 m], px: [100, 170]},
     {at: [1 m, -1 m, 0.4 m], px: [435, 550]},
     {at: [0.4 m, -1 m, 1.1 m], px: [245, 319]},
     {at: [1.5 m, -1 m, 0.9 m], px: [571, 344]}]}
`,
  },
  check({ model, figures }) {
    return [...figures.solvedPhotos.values()].flatMap((solved) =>
      solved.points.flatMap((point, i) => {
        const seen = solved.photo.seen?.[i];
        if (!point.leftOut || point.residualMm === undefined) return [];
        const named =
          seen?.is === undefined
            ? `point ${i + 1}`
            : `${seen.is}${seen.end ? ` (${seen.end} end)` : seen.corner ? ` (corner ${seen.corner})` : ''}`;
        const off = smallLength(point.residualMm, model.shop.units);
        return [
          {
            message: `Photo ${solved.photo.id} shows ${named} ${off} from its recorded place; should agree with the other points: measure it again, or mend \`px\``,
            ids: [solved.photo.id, ...(seen?.is === undefined ? [] : [seen.is])],
            place: solved.photo.source.place('seen', i),
          },
        ];
      }),
    );
  },
};
