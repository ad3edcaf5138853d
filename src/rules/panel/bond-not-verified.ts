import type { Rule, RuleFinding } from '../rule.js';

export const bondNotVerified: Rule = {
  name: 'panel.bond-not-verified',
  severity: 'warning',
  asks: 'missing',
  duty: 'inspector',
  finds:
    'A bonded panel whose log cannot be judged, or whose coupon did not pass. What is missing is a note until the panel’s stage is signed off.',
  why: 'A bond cannot be inspected afterwards: its log is the only evidence that it holds.',
  source: 'EN 17460 and DIN 2304 (bonding is a special process), unverified citation',
  examples: {
    given: `
# library/instruments.yaml
- {id: PT-1, kind: pull tester, resolution: 10 lbf, tolerance: 1 %, calibrated: 2026-01-01, due: 2027-01-01}
# tests.yaml
- {id: TS-1, kind: coupon pull, of: [SK-1], limit: 250 lbf, measured: 390 lbf, instrument: PT-1, date: 2026-02-09}
# panels.yaml
`,
    fails: `
- {id: SK-1, kind: skin, outline: [[0 m, -1 m, 0 m], [1 m, -1 m, 0 m], [1 m, -1 m, 1 m]], fixing: {method: bonded, adhesive: PU, lot: A-1, expires: 2026-12-01, applied: 2026-02-06}}
`,
    passes: `
- {id: SK-1, kind: skin, outline: [[0 m, -1 m, 0 m], [1 m, -1 m, 0 m], [1 m, -1 m, 1 m]], fixing: {method: bonded, adhesive: PU, lot: A-1, expires: 2026-12-01, applied: 2026-02-06}, bond: {surface: 19 C, air: 20 C, humidity: 50 %, open_time: 15 min, open_time_limit: 20 min, cure: 24 h, coupon: TS-1}}
`,
  },
  check({ model: { shell }, figures }) {
    const signed = new Set(shell.signoffs.map(({ stage }) => stage));
    const byId = new Map(shell.panels.map((panel) => [panel.id, panel]));
    return figures.bonds.flatMap(({ panel: id, missing, coupon }): readonly RuleFinding[] => {
      const panel = byId.get(id);
      if (!panel) return [];
      const weak = coupon !== undefined && coupon !== 'passed';
      if (missing.length === 0 && !weak) return [];
      const isSigned = panel.stage !== undefined && signed.has(panel.stage);
      const words = weak
        ? `its coupon ${panel.bond?.coupon} ${coupon === 'failed' ? 'failed' : 'is not verified'}: pull another of the same lot, or decide it in findings.yaml`
        : `${missing.map((key) => `\`${key}\``).join(', ')} ${missing.length === 1 ? 'is' : 'are'} missing: add ${missing.length === 1 ? 'it' : 'them'} from the card of that day`;
      return [
        {
          severity: weak || isSigned ? 'warning' : 'note',
          message: `The bond of panel ${id} is not verified, ${words}`,
          ids: [id, ...(weak && panel.bond?.coupon !== undefined ? [panel.bond.coupon] : [])],
          place: weak ? panel.source.place('bond', 'coupon') : panel.source.place('bond'),
        },
      ];
    });
  },
};
