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
  examples: {
    given: `
# pictures
shells/X-1/photos/a.jpg: {sha256: ab, picture: {widthPx: 1200, heightPx: 900}}
# photos/photos.yaml
`,
    fails: `
- {id: P-1, file: a.jpg, of: [X-1], taken: 2026-04-09, seen: [{at: [0 m, -1 m, 0 m], px: [100, 800]}, {at: [2 m, -1 m, 0 m], px: [700, 620]}]}
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
