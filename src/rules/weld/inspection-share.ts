import { acceptedBy, type InspectionShare, jointClass } from '../../compute/welding/inspection.js';
import type { Model } from '../../model/shell.js';
import { percent } from '../../quantity/format.js';
import type { Rule, RuleFinding } from '../rule.js';
import { signedStage } from './stage-of.js';

export const inspectionShare: Rule = {
  name: 'weld.inspection-share',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds:
    'Fewer joints of a class accepted by a method than the shop asks for, once a stage is signed off: visual of all unless set. (A weld that nobody looked at: weld.not-inspected.)',
  why: 'The share is what was promised for the class of joint; beyond visual nothing is inspected unless somebody asked for it.',
  source: '`inspection` in shop.yaml; visual of all welds by AWS D1.2, more must be specified',
  examples: {
    given: `
# members.yaml
- {id: A, section: RT4x2, alloy: 6061-T6, from: [0 m, 0 m, 0 m], to: [2 m, 0 m, 0 m], stage: floor}
- {id: B, section: RT4x2, alloy: 6061-T6, from: [1 m, 25.4 mm, 0 m], to: [1 m, 1 m, 0 m], stage: floor}
# shop.yaml
shop: {name: Example shop}
inspection: {primary: {VT: 100 %, PT: 100 %}}
# library/people.yaml
- {id: K7, name: A welder, role: welder, qualified: [{process: GMAW, positions: [1F, 2F], thickness: [1/8 in, 3/4 in], groups: [23], from: 2026-01-01, until: 2028-01-01}]}
- {id: J2, name: An inspector, role: inspector, qualified: [{method: VT, from: 2025-01-01, until: 2028-01-01}, {method: PT, from: 2025-01-01, until: 2028-01-01}]}
# signoffs.yaml
- {stage: floor, role: inspector, by: J2, date: 2026-03-31}
# welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}, {method: PT, by: J2, date: 2026-03-04, result: accept}]}
`,
  },
  check({ model, figures }) {
    return figures.inspection.flatMap((share) => judge(share, model));
  },
};

function judge(
  { jointClass: of, method, share, required, joints, accepted }: InspectionShare,
  model: Model,
): readonly RuleFinding[] {
  if (required === undefined || share >= required - 1e-9) return [];
  const left = model.shell.welds.filter(
    (weld) =>
      jointClass(weld, model) === of &&
      weld.inspections.length > 0 &&
      weld.inspections.at(-1)?.result === 'accept' &&
      !acceptedBy(weld, method) &&
      signedStage(weld, model) !== undefined,
  );
  const [first] = left;
  if (!first) return [];
  return [
    {
      message: `${accepted} of ${joints} ${of} joints are accepted by ${method} (${percent(share)}), expected ${percent(required)}: inspect more of them, ${left.length === 1 ? `as ${first.id}` : `from ${first.id} on`}, and add the looks under \`inspections\``,
      ids: left.map(({ id }) => id),
      place: first.source.place('inspections'),
    },
  ];
}
