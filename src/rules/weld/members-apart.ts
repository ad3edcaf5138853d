import { JOINT_TOLERANCE_MM } from '../../compute/structure/joints.js';
import { smallLength } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

export const membersApart: Rule = {
  name: 'weld.members-apart',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds: 'A weld between parts whose outer surfaces are more than 3 mm apart.',
  why: 'Either the weld names the wrong parts or one of them is drawn in the wrong place.',
  source: 'geometry; the tolerance is common practice, no source',
  check({ model, figures }) {
    const { units } = model.shop;
    const welds = new Map(model.shell.welds.map((weld) => [weld.id, weld]));
    return (figures.joints.apart ?? []).flatMap(({ weld: id, members: [a, b], gapMm }) => {
      const weld = welds.get(id);
      if (!weld) return [];
      return [
        {
          message: `Weld ${id} joins ${a} and ${b}, which are ${smallLength(gapMm, units)} apart, expected at most ${smallLength(JOINT_TOLERANCE_MM, units)}: correct \`joins\`, or where ${a} or ${b} lies`,
          ids: [id, a, b],
          place: weld.source.place('joins'),
        } as const,
      ];
    });
  },
};
