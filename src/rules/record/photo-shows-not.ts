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
