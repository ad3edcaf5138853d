import { behaviourOf, isSide, mediaOfRole } from '../../query/isolate/graph/behaviour.js';
import { endsByNode } from '../../query/isolate/graph/facts.js';
import type { Rule, RuleFinding } from '../rule.js';

export const roleMisfit: Rule = {
  name: 'service.role-misfit',
  severity: 'error',
  asks: 'defect',
  duty: 'administrator',
  finds:
    'A role that is not found in the medium of its service, a run that ends on a side which its node has not, or a changeover with fewer than two supplies.',
  why: 'Isolation is worked out from roles and sides. A wrong one is worse than a missing one: the answer would look proved.',
  source: 'common practice, no source',
  examples: {
    given: `
# services/gas.yaml
service: Propane
medium: gas
nodes:
`,
    fails: `
  - {id: G1, kind: device, role: charger, at: [0 m, 0 m, 1 m]}
`,
    passes: `
  - {id: G1, kind: device, role: gas regulator, at: [0 m, 0 m, 1 m]}
`,
  },
  check({ model: { shell } }) {
    const nodes = new Map(shell.nodes.map((node) => [node.id, node] as const));
    const ends = endsByNode(shell.runs);
    const misfits = shell.nodes.flatMap((node): readonly RuleFinding[] => {
      if (node.role === undefined) return [];
      const media = mediaOfRole(node.role);
      // A charger and an inverter stand in one service and end runs of another.
      const touches = [node.medium, ...(ends.get(node.id) ?? []).map(({ run }) => run.medium)];
      if (touches.some((medium) => media.includes(medium))) return [];
      return [
        {
          message: `${node.id} has the role ${node.role} in a service of ${node.medium}, expected one that is found there: that role goes with ${media.join(', ')}`,
          ids: [node.id],
          place: node.source.place('role'),
        },
      ];
    });
    const sides = shell.runs.flatMap((run) =>
      (['from', 'to'] as const).flatMap((end): readonly RuleFinding[] => {
        const side = end === 'from' ? run.fromSide : run.toSide;
        const node = nodes.get(run[end]);
        if (side === undefined || !node) return [];
        const behaviour = behaviourOf(node);
        if (isSide(side, behaviour)) return [];
        const has =
          behaviour.way === 'changeover'
            ? '`supply 1`, `supply 2` … and `load`'
            : behaviour.sides.map((one) => `\`${one}\``).join(', ');
        return [
          {
            message: `${run.id} ends on side \`${side}\` of ${node.id}, which has ${behaviour.sides.length > 0 ? `only ${has}` : 'no sides'} as ${node.role === undefined ? `a ${node.nodeKind} without a role` : `a ${node.role}`}: correct \`${end}_side\`, or the role of ${node.id}`,
            ids: [run.id, node.id],
            place: run.source.place(`${end}_side`),
          },
        ];
      }),
    );
    const changeovers = shell.nodes.flatMap((node): readonly RuleFinding[] => {
      if (node.role !== 'changeover') return [];
      const known = (ends.get(node.id) ?? []).map(({ side }) => side);
      const supplies = new Set(known.filter((side) => side?.startsWith('supply')));
      if (supplies.size >= 2 || known.includes(undefined)) return [];
      return [
        {
          message: `${node.id} is a changeover with ${supplies.size === 1 ? 'one supply' : 'no supply'}, expected two or more: record the run of the other as \`supply 2\`, or give it another role`,
          ids: [node.id],
          place: node.source.place('role'),
        },
      ];
    });
    return [...misfits, ...sides, ...changeovers];
  },
};
