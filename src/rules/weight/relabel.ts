import { relabelLimitKg } from '../../compute/weights/cargo.js';
import { dayOf } from '../../quantity/day.js';
import type { Rule } from '../rule.js';
import { kg } from './text.js';

export const relabel: Rule = {
  name: 'weight.relabel',
  severity: 'warning',
  asks: 'missing',
  duty: 'administrator',
  finds:
    'Amendments before the first retail sale that put on more than the lesser of 1.5 % of GVWR and 100 lb, and no new label on record. Where `first_sale` is not recorded, every amendment counts. A library rule pack may state another limit.',
  why: 'Mass added before first sale must go on the label: the cargo figure there is no longer true.',
  source: '49 CFR 571.120 S10.5, which ends at the first retail sale; 72 FR 68442 (2007)',
  examples: {
    given: `
# components.yaml
- {id: CMP-9, name: A second battery, mass: 60 kg, at: [3 m, 0 m, 0 m], basis: weighed, date: 2026-09-01}
# amendments.yaml
- {id: AM-1, date: 2026-09-01, by: A1, reason: More hours away from shore power, changes: [CMP-9]}
# declared.yaml
`,
    fails: `
# no new label
`,
    passes: `
- {id: LBL-2, kind: label, by: A1, date: 2026-09-02}
`,
  },
  check({ figures, model }) {
    const { chassis, declared, firstSale } = model.shell;
    const amendments = model.shell.amendments.filter((one) => firstSale === undefined || dayOf(one.date) < dayOf(firstSale));
    if (amendments.length === 0 || chassis.gvwrKg === undefined) return [];
    const changed = new Set(amendments.flatMap((amendment) => amendment.changes));
    const added = figures.takeOff.items.filter((item) => changed.has(item.id));
    const addedKg = added.reduce((sum, item) => sum + item.massKg, 0);
    const packed = model.library.rules.find((rule) => rule.rule === 'weight.relabel');
    const limitKg = relabelLimitKg(chassis.gvwrKg, packed?.limit);
    const last = amendments.reduce((a, b) => (a.date >= b.date ? a : b));
    const labelled = declared.some((one) => one.declaredKind === 'label' && (one.date ?? '') >= dayOf(last.date));
    if (addedKg <= limitKg || labelled) return [];
    return [
      {
        message: `Amendments changed ${added.map((item) => item.id).join(', ')}, ${kg(model, addedKg)} together, expected at most ${kg(model, limitKg)} without a new weight label${packed?.citation === undefined ? '' : ` (${packed.citation})`}: print it with \`shellbook labels\`, and record it in declared.yaml, as \`{id: LABEL-2, kind: label, by: …, date: ${last.date}}\``,
        ids: [last.id, ...added.map((item) => item.id)],
        place: last.source.place('changes'),
      },
    ];
  },
};
