import { unlikeContacts } from '../../compute/structure/unlike-metals.js';
import type { RecordBase } from '../../records/index.js';
import type { Rule, RuleFinding } from '../rule.js';

export const bareContact: Rule = {
  name: 'member.bare-contact',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'Aluminium in contact with steel, stainless or copper, at a clamp or where two members meet, without an insulator on record. A clamp counts as steel.',
  why: 'Aluminium corrodes where it touches another metal in the wet, under the paint and out of sight.',
  source: 'MIL-STD-889 (galvanic series), unverified citation; insulator at each clamp: common practice, no source',
  examples: {
    given: `
# members.yaml
- {id: SF-L, section: RT4x2, alloy: 6061-T6, from: [0 m, -0.4 m, 0.1 m], to: [3 m, -0.4 m, 0.1 m]}
# clamps.yaml
`,
    fails: `
- {id: UB-1, kind: U-bolt, at: [1 m, -0.4 m, 0 m], torque: 200 N.m, joins: [SF-L]}
`,
    passes: `
- {id: UB-1, kind: U-bolt, at: [1 m, -0.4 m, 0 m], torque: 200 N.m, joins: [SF-L], insulator: yes}
`,
  },
  check({ model, figures }) {
    const { byId } = model.shell;
    return unlikeContacts(model, figures.joints).flatMap(({ clamp, parts, metals, isolated }): readonly RuleFinding[] => {
      const [first, second] = clamp === undefined ? parts : [clamp, ...parts];
      const blamed = byId.get(first as string)?.record as RecordBase | undefined;
      if (isolated || !blamed) return [];
      const words =
        clamp === undefined
          ? `${first} (${metals[0]}) meets ${second} (${metals[1]}) without an insulator on record, expected one: record the clamp that joins them with \`insulator: yes\``
          : `Clamp ${clamp} holds ${parts.join(', ')} (${metals[0]}) without an insulator on record, expected one: look, and add \`insulator: yes\``;
      return [
        {
          message: `${words}, or record in findings.yaml what keeps the two apart`,
          ids: clamp === undefined ? parts : [clamp, ...parts],
          place: blamed.source.place(clamp === undefined ? 'alloy' : 'insulator'),
          ...(clamp === undefined ? {} : { proposes: [{ kind: 'clamp', id: clamp, path: ['insulator'], value: 'yes' }] }),
        },
      ];
    });
  },
};
