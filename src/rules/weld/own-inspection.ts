import type { Rule } from '../rule.js';

export const ownInspection: Rule = {
  name: 'weld.own-inspection',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'A weld whose only acceptance is by the welder who made it.',
  why: 'Nobody sees their own undercut: the look that counts is another’s.',
  source: 'common practice, no source',
  examples: {
    given: `
# members.yaml
- {id: A, section: RT4x2, alloy: 6061-T6, from: [0 m, 0 m, 0 m], to: [2 m, 0 m, 0 m], stage: floor}
- {id: B, section: RT4x2, alloy: 6061-T6, from: [1 m, 25.4 mm, 0 m], to: [1 m, 1 m, 0 m], stage: floor}
# library/people.yaml
- {id: K7, name: A welder, role: welder, qualified: [{process: GMAW, positions: [1F, 2F], thickness: [1/8 in, 3/4 in], groups: [23], from: 2026-01-01, until: 2028-01-01}, {method: VT, from: 2025-01-01, until: 2028-01-01}]}
- {id: J2, name: An inspector, role: inspector, qualified: [{method: VT, from: 2025-01-01, until: 2028-01-01}]}
# welds.yaml
`,
    fails: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: K7, date: 2026-03-03, result: accept}]}
`,
    passes: `
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, procedure: WPS-1, filler: ER5356, position: 2F, welder: K7, date: 2026-03-02, inspections: [{method: VT, by: J2, date: 2026-03-03, result: accept}]}
`,
  },
  check({ model }) {
    return model.shell.welds.flatMap((weld) => {
      const accepted = weld.inspections.filter(({ result }) => result === 'accept');
      const own = accepted.find(({ by }) => by === weld.welder);
      if (!own || accepted.some(({ by }) => by !== weld.welder)) return [];
      return [
        {
          message: `Weld ${weld.id} was accepted by ${own.by}, who made it, expected someone else: have it inspected again and add the inspection`,
          ids: [weld.id, own.by],
          place: weld.source.place('inspections', weld.inspections.indexOf(own), 'by'),
        } as const,
      ];
    });
  },
};
