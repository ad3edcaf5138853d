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
