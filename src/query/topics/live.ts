import { isSource } from '../isolate/roles.js';
import { stillLive } from '../lookup/still-live.js';
import { facts, type Topic } from './topic.js';

export const live: Topic = {
  name: 'live',
  question: 'What is live when the main is off?',
  words: ['live', 'main', 'mains', 'kill', 'killed', 'killing', 'off', 'hot', 'dead'],
  answer(assessment) {
    const { shell } = assessment.model;
    const rows = stillLive(assessment).flatMap(({ panel, isolation, opened }) => [
      {
        id: panel,
        what: 'all of this makes it dead',
        facts: facts(
          ['do', isolation.actions.filter((one) => one.action !== 'drain').map((one) => `${one.action} ${one.id}`)],
          ['sources', isolation.sources],
          ['sources left', isolation.sourcesLeft.length > 0 ? isolation.sourcesLeft : 'none'],
        ),
      },
      ...opened.map((one) => ({
        id: one.id,
        what: `this alone off leaves ${panel} fed by`,
        facts: facts(['fed by', one.sources.length > 0 ? one.sources : 'no recorded source']),
      })),
    ]);
    return {
      rows,
      notes: [
        `Full list for any circuit, panel or cavity: shellbook isolate ${shell.id} <id>`,
        'Battery and solar terminals stay live on their own side. Measure at the place of work.',
      ],
    };
  },
};

/** What matters before anybody cuts. */
const DANGER = ['gas', 'dc', 'ac'];
const FUEL = /fuel|diesel|gasoline|petrol|propane|\blp/iu;
const SHUT = /\b(?:valve|shut-?off|disconnect|switch|breaker|fuse|main)\b/iu;

export const emergency: Topic = {
  name: 'emergency',
  question: 'In an emergency: where are gas, batteries and mains, and what shuts them?',
  words: ['emergency', 'rescue', 'fire', 'cut', 'zones', 'gas', 'battery', 'batteries'],
  answer({ model: { shell } }) {
    const sources = shell.nodes.filter((node) => DANGER.includes(node.medium) && isSource(node) && node.nodeKind === 'source');
    const shuts = new Map<string, string>();
    // The first things on the lines from a source that can be shut or switched.
    for (const source of sources) {
      const seen = new Set([source.id]);
      const queue = [source.id];
      for (let at = queue.shift(); at !== undefined; at = queue.shift()) {
        for (const run of shell.runs) {
          const next = run.from === at ? run.to : run.to === at ? run.from : undefined;
          const node = shell.nodes.find((one) => one.id === next);
          if (!node || seen.has(node.id)) continue;
          seen.add(node.id);
          if (node.nodeKind === 'valve' || (node.nodeKind === 'device' && SHUT.test(node.name ?? ''))) {
            if (!shuts.has(node.id)) shuts.set(node.id, source.id);
          } else if (node.nodeKind === 'terminal' || node.nodeKind === 'connector' || node.nodeKind === 'junction')
            queue.push(node.id);
        }
      }
    }
    const rows = [
      ...sources.map((node) => ({
        id: node.id,
        what: `${node.name ?? node.medium}: do not cut here`,
        facts: facts(['medium', node.medium]),
      })),
      ...[...shuts].map(([id, of]) => ({
        id,
        what: shell.nodes.find((node) => node.id === id)?.name ?? '',
        facts: facts(['shuts', of]),
      })),
      ...shell.tanks
        .filter(({ contents }) => FUEL.test(contents) && !/exhaust/iu.test(contents))
        .map((tank) => ({ id: tank.id, what: `${tank.contents} tank: do not cut here`, facts: [] })),
    ];
    return {
      rows,
      notes: [
        'First everyone out and away, then the emergency services. Shut and switch only where that is safe.',
        'The page “In an emergency” of every edition draws them.',
      ],
    };
  },
};
