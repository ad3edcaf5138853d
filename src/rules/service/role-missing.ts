import type { Model } from '../../model/shell.js';
import { behaviourOf } from '../../query/isolate/graph/behaviour.js';
import { endsByNode } from '../../query/isolate/graph/facts.js';
import { sidesOf } from '../../query/isolate/graph/sides.js';
import { proposedRole } from '../../query/isolate/proposed-role.js';
import type { ServiceNode } from '../../records/index.js';
import type { Rule } from '../rule.js';
import { isSignedOff } from '../signed-off.js';

/** Named one by one before the rest is counted. */
const MOST = 4;

export const roleMissing: Rule = {
  name: 'service.role-missing',
  severity: 'warning',
  asks: 'missing',
  duty: 'administrator',
  finds:
    'A service with nodes that do not say what they do to their line (`role`), or on which side of them runs end. One finding a service; a note on a shell whose stages are all signed off.',
  why: 'No isolation past such a node can be proved: it may be a source, or join what it seems to separate.',
  source:
    '29 CFR 1910.147(c)(4): procedures name each energy source and what isolates it; common practice for the rest, no source',
  examples: {
    given: `
# services/dc.yaml
service: House
medium: dc
nodes:
`,
    fails: `
  - {id: BAT, kind: source, name: house battery, at: [0 m, 0 m, 1 m]}
`,
    passes: `
  - {id: BAT, kind: source, role: battery, name: house battery, at: [0 m, 0 m, 1 m]}
`,
  },
  check({ model }) {
    return model.shell.services.flatMap((service) => {
      const roles = service.nodes.filter(isSilent);
      const sides = sideless(service.nodes, model);
      const silent = [...roles, ...sides.map(({ node }) => node)];
      const first = silent[0];
      if (!first) return [];
      const asked = [
        ...roles.map((node) => {
          const role = proposedRole(node);
          return role === undefined ? `a \`role\` at ${node.id}` : `\`role: ${role}\` at ${node.id}, if that is what it is`;
        }),
        ...sides.map(({ node, runs }) => `\`from_side\` or \`to_side\` at ${node.id} in ${runs.join(', ')}`),
      ];
      const more = asked.length > MOST ? `, and ${asked.length - MOST} more` : '';
      return [
        {
          severity: isSignedOff(model) ? ('note' as const) : ('warning' as const),
          message: `Service ${service.id} does not say what ${silent.length === 1 ? 'one of its nodes does' : `${silent.length} of its nodes do`} to the line, expected it of each: type ${asked.slice(0, MOST).join('; ')}${more}`,
          ids: silent.map(({ id }) => id),
          place: first.source.place('role'),
          proposes: roles.flatMap((node) => {
            const role = proposedRole(node);
            return role === undefined ? [] : [{ kind: 'node', id: node.id, path: ['role'], value: role }];
          }),
        },
      ];
    });
  },
};

/** Undefined kinds, and sources of which nobody knows what they are. */
const isSilent = (node: ServiceNode): boolean =>
  behaviourOf(node).way === 'unknown' || (node.nodeKind === 'source' && node.role === undefined);

function sideless(nodes: readonly ServiceNode[], { shell }: Model): readonly { node: ServiceNode; runs: readonly string[] }[] {
  const ends = endsByNode(shell.runs);
  return nodes.flatMap((node) => {
    const behaviour = behaviourOf(node);
    if (behaviour.sides.length === 0) return [];
    const { open } = sidesOf(node, behaviour, ends.get(node.id) ?? []);
    return open.length > 0 ? [{ node, runs: open.map(({ run }) => run.id) }] : [];
  });
}
