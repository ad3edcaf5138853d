import { baseParts } from '../../compute/welding/base.js';
import { selectionRows, unsuitedFiller } from '../../compute/welding/filler.js';
import type { Rule } from '../rule.js';

export const fillerUnsuited: Rule = {
  name: 'weld.filler-unsuited',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A filler that no selection row has for the alloys joined, or a silicon filler (4xxx) on an alloy with more than 2 % magnesium.',
  why: 'A silicon filler makes brittle magnesium silicide with these alloys; others crack or fall short of the strength.',
  source:
    'filler selection of a welding textbook (Table 3.3) and its chapter 3 on magnesium silicide; 6005A by EN 1999-1-1 Table 8.8, unverified citation; rows of the shop’s own in library/rules/',
  examples: {
    given: `
# members.yaml
- {id: A, section: RT4x2, alloy: 5083-H116, from: [0 m, 0 m, 0 m], to: [2 m, 0 m, 0 m]}
- {id: B, section: RT4x2, alloy: 5083-H116, from: [1 m, 25.4 mm, 0 m], to: [1 m, 1 m, 0 m]}
# library/materials.yaml
- {id: 5083-H116, kind: aluminium, density: 2660 kg/m3, group: 22}
# library/procedures.yaml
- {id: WPS-1, process: GMAW, types: [fillet], base: [5083-H116], thickness: [1/8 in, 3/4 in], filler: [ER5356, ER4043], positions: [1F, 2F]}
# welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER4043, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
  },
  check({ model }) {
    const rows = selectionRows(model.library.rules);
    return model.shell.welds.flatMap((weld) => {
      const doubt = unsuitedFiller(weld, baseParts(weld, model), rows);
      if (!doubt) return [];
      const { part, alloy, why, suited } = doubt;
      const reason = why === 'silicon' ? ', whose magnesium it makes brittle' : '';
      const wanted = suited.length > 0 ? suited.join(' or ') : 'a filler without silicon, as 5356';
      return [
        {
          message: `Weld ${weld.id} was made with ${weld.filler} on ${alloy} (${part})${reason}, expected ${wanted}: correct \`filler\`, or record in findings.yaml what makes it enough`,
          ids: [weld.id, part],
          place: weld.source.place('filler'),
        } as const,
      ];
    });
  },
};
