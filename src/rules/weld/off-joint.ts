import { OFF_JOINT_MM } from '../../compute/structure/joints.js';
import { length } from '../../quantity/format.js';
import { TWO_MEMBERS } from '../example-records.js';
import type { Rule } from '../rule.js';

export const offJoint: Rule = {
  name: 'weld.off-joint',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A weld recorded more than 50 mm from every joint it belongs to.',
  why: 'Whoever looks for the weld, or for a crack in it, goes to the place on record.',
  source: 'geometry; the tolerance is common practice, no source',
  examples: {
    given: `
${TWO_MEMBERS}
# welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}], at: [1.4 m, 25 mm, 0 m]}
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}], at: [1.02 m, 25 mm, 0 m]}
`,
  },
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
