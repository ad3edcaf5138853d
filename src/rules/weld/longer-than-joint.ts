import type { Joint } from '../../compute/structure/types.js';
import { laidLengthMm } from '../../compute/welding/deposit.js';
import { length } from '../../quantity/format.js';
import { TWO_MEMBERS } from '../example-records.js';
import type { Rule } from '../rule.js';

/** A seam may run this much past the contact as drawn: corner radii, returns, a tape. Project default. */
const ALLOWANCE = 1.1;
const LEAST_MM = 10;

export const longerThanJoint: Rule = {
  name: 'weld.longer-than-joint',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A weld longer than the way around the place where its parts meet (with 10 % allowed).',
  why: 'A length for several joints typed as one joint’s, or a slip of a unit: it would be counted into the filler.',
  source: 'geometry; the allowance is common practice, no source',
  examples: {
    given: `
${TWO_MEMBERS}
# welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 40 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
  },
  check({ model, figures }) {
    const { units } = model.shop;
    const seams = new Map<string, Joint>();
    for (const joint of figures.joints.joints) for (const id of joint.welds) shortest(seams, id, joint);
    return model.shell.welds.flatMap((weld) => {
      const joint = seams.get(weld.id);
      if (joint?.seamMm === undefined || laidLengthMm(weld) <= joint.seamMm * ALLOWANCE + LEAST_MM) return [];
      const both = weld.sides === 'both' ? ' (both sides together)' : '';
      return [
        {
          message: `Weld ${weld.id} is ${length(laidLengthMm(weld), units)}${both} at each joint, expected at most ${length(joint.seamMm, units)} around the contact of ${joint.members.join(' and ')}: \`length\` is for one joint and one side`,
          ids: [weld.id, ...joint.members],
          place: weld.source.place('length'),
        } as const,
      ];
    });
  },
};

function shortest(seams: Map<string, Joint>, id: string, joint: Joint): void {
  const known = seams.get(id);
  if (known === undefined || (joint.seamMm ?? Infinity) < (known.seamMm ?? Infinity)) seams.set(id, joint);
}
