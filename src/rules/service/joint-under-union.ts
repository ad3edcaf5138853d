import { placedNodes } from '../../model/placed.js';
import { length } from '../../quantity/format.js';
import type { Rule } from '../rule.js';

/** Seen from above, a joint this near to a union is under it, mm. Project default. */
const UNDER_MM = 75;
/** A drip from further up finds another way, mm. Project default. */
const DROP_MM = 600;

const JOINTS = ['splice', 'connector', 'junction', 'terminal'];
const UNIONS = ['fitting', 'valve', 'drain', 'test-point'];

export const jointUnderUnion: Rule = {
  name: 'service.joint-under-union',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'An electric joint right under a union, valve or drain of a water or waste line.',
  why: 'Unions are what drips, and a wet joint corrodes or shorts.',
  source: 'common practice, no source',
  examples: {
    given: `
# services/water.yaml
service: Water
medium: water
nodes:
  - {id: V1, kind: valve, at: [1 m, 0 m, 1 m]}
# services/dc.yaml
service: Lights
medium: dc
nodes:
`,
    fails: `
  - {id: S1, kind: splice, at: [1 m, 0.02 m, 0.9 m]}
`,
    passes: `
  - {id: S1, kind: splice, at: [2 m, 0.02 m, 0.9 m]}
`,
  },
  check({ model: { shell, shop } }) {
    const nodes = placedNodes(shell.nodes);
    const unions = nodes.filter((node) => ['water', 'drain'].includes(node.medium) && UNIONS.includes(node.nodeKind));
    const joints = nodes.filter((node) => ['dc', 'ac', 'data'].includes(node.medium) && JOINTS.includes(node.nodeKind));
    return joints.flatMap((joint) =>
      unions.flatMap((union) => {
        const aside = Math.hypot(union.at[0] - joint.at[0], union.at[1] - joint.at[1]);
        const above = union.at[2] - joint.at[2];
        if (aside > UNDER_MM || above <= 0 || above > DROP_MM) return [];
        return [
          {
            message: `${joint.nodeKind} ${joint.id} lies ${length(above, shop.units)} under ${union.nodeKind} ${union.id}, expected no electric joint under a union: move one aside by ${length(UNDER_MM, shop.units)} or more`,
            ids: [joint.id, union.id],
            place: joint.source.place('at'),
            related: [{ message: `${union.id}, above it`, place: union.source.place('at') }],
          },
        ];
      }),
    );
  },
};
