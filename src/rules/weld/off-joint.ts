import { OFF_JOINT_MM } from '../../compute/structure/joints.js';
import { length } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const offJoint: Rule = {
  name: 'weld.off-joint',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A weld whose recorded place is more than 50 mm from every joint that it is of.',
  why: 'Whoever looks for the weld, or for a crack in it, goes to the place on record.',
  source: 'geometry; the tolerance is common practice, no source',
  check({ model: { shell, shop }, figures }) {
    const welds = new Map(shell.welds.map((weld) => [weld.id, weld]));
    return (figures.joints.offJoint ?? []).flatMap(({ weld: id, members: [a, b], distanceMm }) => {
      const weld = welds.get(id);
      if (!weld) return [];
      return [
        {
          message: `Weld ${id} is recorded at a place ${length(distanceMm, shop.units)} from the joint of ${a} and ${b}, expected at most ${length(OFF_JOINT_MM, shop.units)}: correct \`at\` or \`joins\``,
          ids: [id, a, b],
          place: weld.source.place('at'),
        } as const,
      ];
    });
  },
};
