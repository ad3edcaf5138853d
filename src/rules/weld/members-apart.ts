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
  examples: {
    given: `
# members.yaml
- {id: A, section: RT4x2, alloy: 6061-T6, from: [0 m, 0 m, 0 m], to: [2 m, 0 m, 0 m]}
# welds.yaml
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
# members-2.yaml
`,
    fails: `
- {id: B, section: RT4x2, alloy: 6061-T6, from: [1 m, 40 mm, 0 m], to: [1 m, 1 m, 0 m]}
`,
    passes: `
- {id: B, section: RT4x2, alloy: 6061-T6, from: [1 m, 25.4 mm, 0 m], to: [1 m, 1 m, 0 m]}
`,
  },
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
