import { earthNodes } from '../../compute/services/earths.js';

export { earthNodes } from '../../compute/services/earths.js';

import { facts, type Topic } from './topic.js';

export const earths: Topic = {
  name: 'earths',
  ask: 'find.earths',
  words: ['earth', 'earths', 'earthing', 'ground', 'grounds', 'grounding', 'bond', 'bonds', 'bonding', 'stud', 'studs'],
  answer({ model: { shell } }) {
    const nodes = earthNodes(shell);
    const lugs = (id: string): number => shell.runs.filter((run) => run.from === id || run.to === id).length;
    return {
      rows: nodes.map((node) => ({
        id: node.id,
        what: node.name ?? node.nodeKind,
        facts: facts(['torque', node.torqueNm, 'nm'], ['terminals', lugs(node.id)], ['note', node.note]),
      })),
      notes:
        nodes.length === 0
          ? ['No ground bond is recorded (`bonding: yes` on a circuit): not verified.']
          : ['Leave a ground connected while anything it protects is live.'],
    };
  },
};
