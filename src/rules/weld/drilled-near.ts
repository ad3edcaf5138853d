import { type DrilledNear, drilledNear } from '../../compute/structure/drilled-near.js';
import { length, positionWords } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

/** Runs named in a message; the ids have all of them. */
const SHOWN = 4;

export const drilledNearWeld: Rule = {
  name: 'weld.drilled-near',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'A run that passes through a primary member within an inch, or three walls, of a member welded to it. One finding for each member.',
  why: 'The metal beside a weld has lost strength: a hole there takes the rest.',
  source:
    'Aluminum Design Manual (weld-affected zone of 1 in each way), unverified citation; three walls: common practice, no source',
  examples: {
    given: `
# members.yaml
- {id: A, section: RT4x2, alloy: 6061-T6, from: [0 m, 0 m, 0 m], to: [2 m, 0 m, 0 m]}
- {id: B, section: RT4x2, alloy: 6061-T6, from: [1 m, 25.4 mm, 0 m], to: [1 m, 1 m, 0 m]}
# welds.yaml
- {id: W-1, joins: [A, B], type: fillet, size: 1/4 in, length: 4 in, process: GMAW, date: 2026-03-02}
# services/dc.yaml
service: Lights
medium: dc
circuits: [{id: DC-1, voltage: 12 V, conductor: {awg: 14}}]
runs: [{id: DC-1/1, circuit: DC-1, from: N1, to: N2, grommets: [A]}]
nodes:
`,
    fails: `
  - {id: N1, kind: source, at: [1 m, 0.015 m, -0.5 m]}
  - {id: N2, kind: load, at: [1 m, 0.015 m, 0.5 m]}
`,
    passes: `
  - {id: N1, kind: source, at: [0.5 m, 0.015 m, -0.5 m]}
  - {id: N2, kind: load, at: [0.5 m, 0.015 m, 0.5 m]}
`,
  },
  check({ model, figures }) {
    const { units } = model.shop;
    const members = new Map(model.shell.members.map((member) => [member.id, member]));
    const near = drilledNear(model, figures.services.crossings, figures.joints.joints, figures.takeOff.runs);
    const byMember = new Map<string, DrilledNear[]>();
    for (const one of near) byMember.set(one.member, [...(byMember.get(one.member) ?? []), one]);
    return [...byMember].flatMap(([id, holes]) => {
      const member = members.get(id);
      const worst = holes.reduce((a, b) => (b.distanceMm < a.distanceMm ? b : a), holes[0] as DrilledNear);
      if (!member) return [];
      const runs = [...new Set(holes.map(({ run }) => run))];
      const more = runs.length > SHOWN ? ` and ${runs.length - SHOWN} more` : '';
      return [
        {
          message: `${runs.slice(0, SHOWN).join(', ')}${more} ${runs.length === 1 ? 'passes' : 'pass'} through ${id} ${length(worst.distanceMm, units)} from ${worst.other}, welded to it by ${worst.weld}, at ${positionWords(worst.at, units)}, expected at least ${length(worst.limitMm, units)}: move the hole, or record in findings.yaml who allowed it there`,
          ids: [id, ...runs, worst.other, worst.weld],
          place: member.source.place(),
        } as const,
      ];
    });
  },
};
