import type { Rule } from '../rule.js';

const WHY = {
  'too few': 'it has too few',
  outside: 'some lie outside the picture',
  twice: 'two are one place or one pixel',
  'on a line': 'all lie on one line',
  'no fit': 'no camera shows them so',
  'over limit': 'they do not agree with each other',
  mirrored: 'the picture is mirrored',
  turned: 'they were counted on a turned copy',
  cropped: 'the picture is a crop',
} as const;

export const photoPointsUnusable: Rule = {
  name: 'record.photo-points-unusable',
  severity: 'note',
  asks: 'defect',
  duty: 'administrator',
  finds: 'A photo with marked points that cannot be tied to the coach by them.',
  why: 'Nothing can be drawn on it or read from it.',
  source: 'common practice, no source',
  check({ figures }) {
    return [...figures.solvedPhotos.values()].flatMap((solved) => {
      const [note] = solved.notes;
      if (solved.usable && solved.noPoints.size === 0) return [];
      const wrong = [...solved.noPoints].map(([i, { found, expected }]) => ({
        message: `Photo ${solved.photo.id}: found ${found} as point ${i + 1}; should be ${expected}`,
        ids: [solved.photo.id],
        place: solved.photo.source.place('seen', i),
      }));
      if (solved.usable || !note) return wrong;
      return [
        ...wrong,
        {
          message: `The points marked in photo ${solved.photo.id} cannot be used: ${WHY[note.what]}. See \`shellbook overlay SHELL ${solved.photo.id}\``,
          ids: [solved.photo.id],
          place: solved.photo.source.place('seen'),
        },
      ];
    });
  },
};
