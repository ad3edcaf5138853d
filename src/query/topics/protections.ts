import { upstream } from '../lookup/upstream.js';
import { facts, type Topic, type TopicRow } from './topic.js';

export const protections: Topic = {
  name: 'fuses',
  ask: 'find.fuses',
  words: ['fuse', 'fuses', 'breaker', 'breakers', 'protection', 'protections', 'inline'],
  answer({ model: { shell } }) {
    const named = new Map(shell.nodes.map((node) => [node.id, node.name] as const));
    const held = new Set(shell.circuits.map((circuit) => circuit.protection?.at));
    const ofCircuits = shell.circuits.flatMap((circuit): readonly TopicRow[] => {
      const { protection } = circuit;
      if (!protection) return [];
      const before = upstream(shell, circuit).flatMap((one) => one.protection?.at ?? []);
      const own = protection.at === undefined ? undefined : named.get(protection.at);
      return [
        {
          ...(protection.at === undefined ? {} : { id: protection.at }),
          what: [protection.kind, own].filter(Boolean).join(', '),
          facts: facts(
            ['rating', protection.ratingA, 'a'],
            ['protects', `${circuit.id} ${circuit.name}`],
            ['fed through', [...new Set(before)]],
          ),
        },
      ];
    });
    const others = shell.nodes
      .filter((node) => (node.role === 'fuse' || node.role === 'breaker') && !held.has(node.id))
      .map((node) => ({ id: node.id, what: node.name ?? '', facts: facts(['rating', node.rating?.text]) }));
    const bare = shell.circuits.filter(
      ({ medium, protection, bonding }) => (medium === 'dc' || medium === 'ac') && !protection && !bonding,
    );
    return {
      rows: [...ofCircuits, ...others],
      notes: bare.length > 0 ? [`Without any on record: ${bare.map((one) => one.id).join(', ')}.`] : [],
    };
  },
};
