import type { Rule } from '../rule.js';

/** Lugs on one stud: ABYC E-11, unverified citation. */
const MOST = 4;

export const studCrowded: Rule = {
  name: 'service.stud-crowded',
  severity: 'note',
  asks: 'defect',
  duty: 'trade',
  finds: 'A stud with more than four terminals on it.',
  why: 'The nut no longer clamps the lowest lug, and it works loose on the road.',
  source: 'ABYC E-11, unverified citation',
  examples: {
    given: `
# services/dc.yaml
service: House
medium: dc
nodes:
  - {id: ST-1, kind: terminal, name: stud, at: [0 m, 0 m, 1 m]}
  - {id: L1, kind: load, at: [1 m, 0 m, 1 m]}
  - {id: L2, kind: load, at: [2 m, 0 m, 1 m]}
  - {id: L3, kind: load, at: [3 m, 0 m, 1 m]}
  - {id: L4, kind: load, at: [4 m, 0 m, 1 m]}
  - {id: L5, kind: load, at: [5 m, 0 m, 1 m]}
runs:
  - {id: R1, from: ST-1, to: L1}
  - {id: R2, from: ST-1, to: L2}
  - {id: R3, from: ST-1, to: L3}
  - {id: R4, from: ST-1, to: L4}
`,
    fails: `
  - {id: R5, from: ST-1, to: L5}
`,
    passes: `
  - {id: R5, from: L4, to: L5}
`,
  },
  check({ model: { shell } }) {
    const lugs = new Map<string, number>();
    for (const run of shell.runs) for (const end of [run.from, run.to]) lugs.set(end, (lugs.get(end) ?? 0) + 1);
    return shell.nodes
      .filter((node) => node.nodeKind === 'terminal' && node.role !== 'busbar' && (lugs.get(node.id) ?? 0) > MOST)
      .map((node) => ({
        message: `${node.id} holds ${lugs.get(node.id)} terminals, expected at most ${MOST} on a stud: add a bar, or name it one`,
        ids: [node.id],
        place: node.source.place(),
      }));
  },
};
