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
    'filler selection of a welding textbook (Table 3.3) and its chapter 3 on magnesium silicide; 6005A by EN 1999-1-1 Table 8.8, from memory; rows of the shop’s own in library/rules/',
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
