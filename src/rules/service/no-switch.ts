import { isolate } from '../../query/isolate/index.js';
import type { Rule } from '../rule.js';

export const noSwitch: Rule = {
  name: 'service.no-switch',
  severity: 'warning',
  asks: 'missing',
  duty: 'trade',
  finds: 'A distribution panel that no switch, fuse or breaker parts from one of its sources.',
  why: 'Shore, generator, battery, solar and inverter can each feed it. Whoever works on it must then take live leads off.',
  source: 'common practice, no source; a licensed electrician decides',
  examples: {
    given: `
# services/dc.yaml
service: House
medium: dc
circuits: [{id: DC-M, voltage: 12 V}]
runs:
  - {id: DC-M/1, circuit: DC-M, from: BAT, to: SW, to_side: line}
  - {id: DC-M/2, circuit: DC-M, from: SW, from_side: load, to: DCP}
nodes:
  - {id: BAT, kind: source, role: battery, name: house battery, at: [0 m, 0 m, 1 m]}
  - {id: DCP, kind: panel, role: busbar, name: distribution panel, at: [1 m, 0 m, 1 m]}
`,
    fails: `
  - {id: SW, kind: junction, role: busbar, name: bus bar, at: [0.5 m, 0 m, 1 m]}
`,
    passes: `
  - {id: SW, kind: device, role: switch, name: battery switch, at: [0.5 m, 0 m, 1 m]}
`,
  },
  check({ model, figures }) {
    return model.shell.nodes
      .filter((node) => node.nodeKind === 'panel' && (node.medium === 'dc' || node.medium === 'ac'))
      .flatMap((node) => {
        const found = isolate({ model, figures }, node.id);
        const parted = found?.actions.filter((one) => one.lines !== undefined).map((one) => one.id) ?? [];
        const ids = [...new Set([...parted, ...(found?.sourcesLeft ?? [])])];
        if (ids.length === 0) return [];
        return [
          {
            message: `Nothing on record switches ${node.id} off from ${ids.join(', ')}, expected a switch, fuse or breaker on the way from each source: fit one, or add it to the nodes`,
            ids: [node.id, ...ids],
            place: node.source.place(),
          },
        ];
      });
  },
};
