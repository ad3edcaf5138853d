import { serviceGraph } from '../../query/isolate/graph/graph.js';
import type { Rule } from '../rule.js';

export const oneWayLoop: Rule = {
  name: 'service.one-way-loop',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds:
    'Devices that pass one way only and feed each other in a ring, as a charger on the output of an inverter that its own battery feeds.',
  why: 'Such a ring turns power into heat until the battery is empty, or a side is recorded the wrong way round.',
  source: 'common practice, no source',
  examples: {
    given: `
# services/dc.yaml
service: House
medium: dc
nodes:
  - {id: BAT, kind: source, role: battery, at: [0 m, 0 m, 1 m]}
  - {id: INV, kind: device, role: inverter, at: [1 m, 0 m, 1 m]}
  - {id: CHG, kind: device, role: charger, at: [2 m, 0 m, 1 m]}
  - {id: ACP, kind: junction, role: busbar, at: [1.5 m, 0 m, 1 m]}
runs:
  - {id: R1, from: BAT, to: INV, to_side: in}
  - {id: R2, from: CHG, from_side: out, to: BAT}
# services/ac.yaml
service: Shore
medium: ac
nodes:
  - {id: SH, kind: source, role: shore inlet, at: [3 m, 0 m, 1 m]}
runs:
  - {id: R3, from: INV, from_side: out, to: ACP}
`,
    fails: `
  - {id: R4, from: ACP, to: CHG, to_side: in}
`,
    passes: `
  - {id: R4, from: SH, to: CHG, to_side: in}
`,
  },
  check({ model: { shell } }) {
    const { edges, vertices } = serviceGraph(shell);
    const onward = vertices.map((): { to: number; device?: string }[] => []);
    for (const { from, to, oneWay, drive } of edges) {
      if (drive || vertices[from]?.of === 'source') continue;
      const device = oneWay ? (vertices[from]?.id as string) : undefined;
      onward[from]?.push({ to, ...(device === undefined ? {} : { device }) });
      if (!oneWay) onward[to]?.push({ to: from });
    }
    const nodes = new Map(shell.nodes.map((node) => [node.id, node] as const));
    const told = new Set<string>();
    return edges.flatMap(({ from, to, oneWay, drive }) => {
      const id = vertices[from]?.id as string;
      if (!oneWay || drive || vertices[from]?.of === 'source' || told.has(id)) return [];
      const ring = wayBack(to, from, onward).filter((one) => one !== id);
      if (ring.length === 0) return [];
      for (const one of [id, ...ring]) told.add(one);
      return [
        {
          message: `${[id, ...ring].join(', ')} feed each other in a ring, expected power to come from a source and end in a load: look at \`from_side\` and \`to_side\` of the runs between them, or fit what keeps them apart`,
          ids: [id, ...ring],
          place: (nodes.get(id) as NonNullable<ReturnType<typeof nodes.get>>).source.place('role'),
        },
      ];
    });
  },
};

/** Devices on the shortest way from one vertex back to another; empty where there is none. */
function wayBack(
  start: number,
  goal: number,
  onward: readonly (readonly { to: number; device?: string }[])[],
): readonly string[] {
  const before = new Map<number, { readonly at: number; readonly device?: string }>();
  const queue = [start];
  for (let i = 0; i < queue.length; i++) {
    const at = queue[i] as number;
    for (const { to, device } of onward[at] ?? []) {
      if (to === start || before.has(to)) continue;
      before.set(to, { at, ...(device === undefined ? {} : { device }) });
      queue.push(to);
    }
  }
  const devices: string[] = [];
  if (!before.has(goal)) return [];
  for (let at = goal; at !== start; ) {
    const step = before.get(at) as { readonly at: number; readonly device?: string };
    if (step.device !== undefined) devices.push(step.device);
    at = step.at;
  }
  return [...new Set(devices)].reverse();
}
