import { sightedIn } from '../../compute/pictures/solved-photos.js';
import type { Rule } from '../rule.js';

export const photoShowsNot: Rule = {
  name: 'record.photo-shows-not',
  severity: 'warning',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'A photo that names a splice, valve or other node which lies outside its frame or behind something, by the points marked in it.',
  why: 'It proves nothing of that node, and the panel may close over it unseen.',
  source: 'common practice, no source; the camera by the photo’s own points',
  examples: {
    given: `
# services/dc.yaml
service: Lights
medium: dc
nodes:
  - {id: S1, kind: splice, at: [1 m, 0 m, 0.8 m], tolerance: 10 mm}
  - {id: S2, kind: splice, at: [9 m, 0 m, 0.8 m], tolerance: 10 mm}
# pictures
shells/X-1/photos/a.jpg: {sha256: ab, picture: {widthPx: 4000, heightPx: 3000}}
# photos/photos.yaml
`,
    fails: `
- {id: P-1, file: a.jpg, of: [S2], taken: 2026-04-09,
   seen: [{at: [0 m, 0 m, 0 m], px: [1340, 2028]},
     {at: [2 m, 0 m, 0.2 m], px: [2660, 1896]},
     {at: [2 m, -1 m, 1.5 m], px: [2825, 922]},
     {at: [0 m, 0.3 m, 1.5 m], px: [1377, 1064]},
     {at: [1 m, -0.8 m, 0.4 m], px: [2000, 1814]},
     {at: [0.4 m, -0.2 m, 1.1 m], px: [1588, 1294]},
     {at: [1.5 m, 0.5 m, 0.9 m], px: [2300, 1440]},
     {at: [0.2 m, -1 m, 0.6 m], px: [1340, 1665]}]}
`,
    passes: `
- {id: P-1, file: a.jpg, of: [S1], taken: 2026-04-09,
   seen: [{at: [0 m, 0 m, 0 m], px: [1340, 2028]},
     {at: [2 m, 0 m, 0.2 m], px: [2660, 1896]},
     {at: [2 m, -1 m, 1.5 m], px: [2825, 922]},
     {at: [0 m, 0.3 m, 1.5 m], px: [1377, 1064]},
     {at: [1 m, -0.8 m, 0.4 m], px: [2000, 1814]},
     {at: [0.4 m, -0.2 m, 1.1 m], px: [1588, 1294]},
     {at: [1.5 m, 0.5 m, 0.9 m], px: [2300, 1440]},
     {at: [0.2 m, -1 m, 0.6 m], px: [1340, 1665]}]}
`,
  },
  check({ model, figures }) {
    const nodes = new Map(model.shell.nodes.map((node) => [node.id, node]));
    return [...figures.solvedPhotos.values()].flatMap((solved) => {
      const sighted = sightedIn(model, solved);
      if (!sighted) return [];
      return solved.photo.of.flatMap((id, i) => {
        const at = nodes.get(id)?.at;
        const how = at && sighted(at, new Set([id]));
        if (!how || how === 'seen') return [];
        const why =
          how === 'outside'
            ? 'lies outside its frame'
            : how === 'too small'
              ? 'is too far away to be read'
              : `is hidden by ${how.hiddenBy}`;
        return [
          {
            message: `Photo ${solved.photo.id} names ${id}, which ${why}; should show it: take a picture of it, or take it out of \`of\``,
            ids: [solved.photo.id, id],
            place: solved.photo.source.place('of', i),
          },
        ];
      });
    });
  },
};
