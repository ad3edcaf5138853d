import { smallLength } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const photoPointOff: Rule = {
  name: 'record.photo-point-off',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A record that a photo shows elsewhere than where it is recorded: the other points marked in the picture put it there.',
  why: 'Either the place was typed wrong, or the point was: whoever drills by it will be as far off.',
  source:
    'projective geometry (Hartley and Zisserman, Multiple View Geometry, 2nd ed. 2003); limit `limits: {overlay}`, project default 20 mm',
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
