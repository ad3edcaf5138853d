import { expiredAdhesive } from '../../query/concealment.js';
import type { Rule } from '../rule.js';

export const adhesiveExpired: Rule = {
  name: 'order.adhesive-expired',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A panel bonded with adhesive past its expiry date.',
  why: 'A bond cannot be inspected afterwards, so what went into it must be in date.',
  source: 'common practice, no source',
  examples: {
    given: `
# panels.yaml
`,
    fails: `
- {id: SK-1, kind: skin, outline: [[0 m, -1 m, 0 m], [1 m, -1 m, 0 m], [1 m, -1 m, 1 m]], fixing: {method: bonded, adhesive: PU, lot: A-1, expires: 2026-02-01, applied: 2026-02-06}}
`,
    passes: `
- {id: SK-1, kind: skin, outline: [[0 m, -1 m, 0 m], [1 m, -1 m, 0 m], [1 m, -1 m, 1 m]], fixing: {method: bonded, adhesive: PU, lot: A-1, expires: 2026-02-06, applied: 2026-02-06}}
`,
  },
  check({ model: { shell } }) {
    return shell.panels.flatMap((panel) => {
      const past = expiredAdhesive(panel);
      if (!past) return [];
      const { applied, expires } = past;
      const lot = panel.fixing?.lot === undefined ? '' : ` lot ${panel.fixing.lot}`;
      return [
        {
          message: `Adhesive${lot} on panel ${panel.id} was applied on ${applied}, expected on or before its expiry ${expires}: test a coupon of it and decide it in findings.yaml`,
          ids: [panel.id],
          place: panel.source.place('fixing', 'expires'),
        } as const,
      ];
    });
  },
};
