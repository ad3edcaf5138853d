import { isSameConnection } from '../../compute/services/same-connection.js';
import { type PlacedNode, placedNodes } from '../../model/placed.js';
import type { Rule } from '../rule.js';

export const nodeTwice: Rule = {
  name: 'service.node-twice',
  severity: 'warning',
  asks: 'defect',
  duty: 'trade',
  finds: 'One connection under two ids, or a run that begins and ends at one node.',
  why: 'Runs end at the one or the other, and the line looks broken between them: nothing follows it, and nothing isolates it.',
  source: 'common practice, no source',
  examples: {
    given: `
# services/dc.yaml
service: Lights
medium: dc
nodes:
  - {id: S1, kind: splice, at: [1 m, 0 m, 1 m]}
`,
    fails: `
  - {id: S2, kind: splice, at: [1 m, 0 m, 1 m]}
`,
    passes: `
  - {id: S2, kind: splice, at: [1.3 m, 0 m, 1 m]}
`,
  },
  check({ model: { shell } }) {
    const byCell = new Map<string, PlacedNode[]>();
    for (const node of placedNodes(shell.nodes)) {
      const cell = `${node.service} ${node.at.map(Math.round).join(' ')}`;
      byCell.set(cell, [...(byCell.get(cell) ?? []), node]);
    }
    const twice = [...byCell.values()].flatMap((some) =>
      some.flatMap((node, i) => {
        const first = some.slice(0, i).find((other) => isSameConnection(node, other));
        if (!first) return [];
        return [
          {
            message: `${node.nodeKind} ${node.id} is at the very place of ${first.id}, expected one record a connection: delete one and let its runs end at the other, or correct its place`,
            ids: [node.id, first.id],
            place: node.source.place(),
            related: [{ message: `${first.id}, the first`, place: first.source.place() }],
          },
        ];
      }),
    );
    const loops = shell.runs
      .filter((run) => run.from === run.to)
      .map((run) => ({
        message: `${run.id} runs from ${run.from} to ${run.to}, expected two different nodes: correct \`to\``,
        ids: [run.id, run.from],
        place: run.source.place('to'),
      }));
    return [...twice, ...loops];
  },
};
