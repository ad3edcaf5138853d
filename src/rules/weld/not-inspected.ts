import { TWO_MEMBERS } from '../example-records.js';
import type { Rule } from '../rule.js';
import { signedStage } from './stage-of.js';

export const notInspected: Rule = {
  name: 'weld.not-inspected',
  severity: 'error',
  asks: 'missing',
  duty: 'inspector',
  finds: 'A weld without an inspection on record. A warning until the stage of the weld, or of what it joins, is signed off.',
  why: 'Each weld is inspected before paint and panels hide it; what is not on record is not verified.',
  source: 'AWS D1.2: visual inspection of all welds is the default; the step at sign-off is common practice, no source',
  examples: {
    given: `
${TWO_MEMBERS}
# welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02}
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
  },
  check({ model }) {
    return model.shell.welds.flatMap((weld) => {
      if (weld.inspections.length > 0) return [];
      const stage = signedStage(weld, model);
      const signed = stage === undefined ? '' : `, and stage ${stage} is signed off`;
      return [
        {
          severity: stage === undefined ? 'warning' : 'error',
          message: `Weld ${weld.id} has no inspection on record${signed}, expected at least a visual one: add \`inspections: [{method: VT, by: .., date: .., result: accept}]\``,
          ids: [weld.id],
          place: weld.source.place(),
        } as const,
      ];
    });
  },
};
