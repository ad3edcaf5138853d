import { facts, type Topic } from './topic.js';

export const valves: Topic = {
  name: 'valves',
  ask: 'find.shutoff',
  words: ['valve', 'valves', 'shutoff', 'shutoffs', 'shut', 'off', 'drains', 'stopcock', 'stopcocks', 'tap', 'taps'],
  beside: ['water', 'fresh', 'gas', 'propane', 'fuel', 'air', 'main', 'hot', 'cold'],
  answer({ model: { shell } }) {
    const services = new Map(shell.services.map((service) => [service.id, service.name] as const));
    const rows = shell.nodes
      .filter(
        (node) =>
          node.nodeKind === 'valve' || node.nodeKind === 'drain' || node.role === 'shut-off' || node.role === 'drain cock',
      )
      .map((node) => ({
        id: node.id,
        what: `${node.name ?? node.nodeKind}, ${services.get(node.service) ?? node.medium}`,
        facts: facts(['kind', node.nodeKind], ['stands', node.position ?? 'not recorded']),
      }));
    return { rows, notes: rows.length === 0 ? ['No valve or drain is recorded.'] : [] };
  },
};
