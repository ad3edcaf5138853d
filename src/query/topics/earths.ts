import { facts, type Topic } from './topic.js';

/** Studs, bars and bonds, by what the shop calls them. */
export const EARTH = /\b(?:earth|ground|bond(?:ing)?|chassis stud|negative bar|protective conductor)\b/iu;

export const earths: Topic = {
  name: 'earths',
  question: 'Where are the earths and bonding studs?',
  words: ['earth', 'earths', 'earthing', 'ground', 'grounds', 'grounding', 'bond', 'bonds', 'bonding', 'stud', 'studs'],
  answer({ model: { shell } }) {
    const nodes = shell.nodes.filter(
      (node) =>
        ['dc', 'ac', 'data'].includes(node.medium) &&
        node.nodeKind !== 'load' &&
        EARTH.test(`${node.name ?? ''} ${node.note ?? ''}`),
    );
    const lugs = (id: string): number => shell.runs.filter((run) => run.from === id || run.to === id).length;
    return {
      rows: nodes.map((node) => ({
        id: node.id,
        what: node.name ?? node.nodeKind,
        facts: facts(['torque', node.torqueNm, 'nm'], ['terminals', lugs(node.id)], ['note', node.note]),
      })),
      notes:
        nodes.length === 0
          ? ['No earth or bonding stud is recorded.']
          : ['An earth stays joined while anything that it protects is live.'],
    };
  },
};
