import type { Rule } from '../rule.js';

/** Lugs on one stud: ABYC E-11, from memory. */
const MOST = 4;

export const studCrowded: Rule = {
  name: 'service.stud-crowded',
  severity: 'note',
  asks: 'defect',
  duty: 'trade',
  finds: 'A stud with more than four terminals on it.',
  why: 'The nut no longer clamps the lowest lug, and it works loose on the road.',
  source: 'ABYC E-11, from memory',
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
