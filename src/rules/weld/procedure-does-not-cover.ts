import { uncovered } from '../../compute/welding/procedure.js';
import { thickness } from '../../quantity/format.js';
import type { Weld } from '../../records/index.js';
import { TWO_MEMBERS } from '../example-records.js';
import type { Rule, RuleFinding } from '../rule.js';

export const procedureDoesNotCover: Rule = {
  name: 'weld.procedure-does-not-cover',
  severity: 'error',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A weld outside its procedure: process, type, filler, position, base metal, thickness of the thinner part. A warning where no procedure is named.',
  why: 'A procedure is proved for what it lists; outside that, nobody has shown that the weld holds.',
  source: 'ISO 15614-2 and AWS D1.2: the ranges are those on the record; the thinner part counts (EN 288-4)',
  examples: {
    given: `
${TWO_MEMBERS}
# welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 3F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
  },
  check({ model }) {
    const { library, shell, shop } = model;
    return shell.welds.flatMap((weld): readonly RuleFinding[] => {
      if (weld.procedure === undefined) return [notVerified(weld)];
      const procedure = library.procedures.get(weld.procedure);
      if (!procedure) return [];
      const out = uncovered(weld, procedure, model, (mm) => thickness(mm, shop.units));
      const first = out[0];
      if (!first) return [];
      const words = out.map(({ has, allowed }) => `${has}, expected ${allowed}`).join('; ');
      return [
        {
          message: `Weld ${weld.id} is outside procedure ${procedure.id}: ${words}. Correct the weld, or name the procedure that covers it`,
          ids: [weld.id, procedure.id],
          place: weld.source.place(first.field),
        } as const,
      ];
    });
  },
};

const notVerified = (weld: Weld): RuleFinding => ({
  severity: 'warning',
  message: `Weld ${weld.id} names no procedure, so it is not verified against one: add \`procedure:\` with an id of procedures.yaml`,
  ids: [weld.id],
  place: weld.source.place(),
});
