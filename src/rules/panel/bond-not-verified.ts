import type { Rule, RuleFinding } from '../rule.js';

export const bondNotVerified: Rule = {
  name: 'panel.bond-not-verified',
  severity: 'warning',
  asks: 'missing',
  duty: 'inspector',
  finds:
    'A bonded panel whose log cannot be judged, or whose coupon did not pass. What is missing is a note until the panel’s stage is signed off.',
  why: 'A bond cannot be inspected afterwards: its log is the only evidence that it holds.',
  source: 'EN 17460 and DIN 2304 (bonding is a special process), from memory',
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
