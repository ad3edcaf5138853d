import { behaviourOf } from '../isolate/graph/behaviour.js';
import { shutOffs } from '../isolate/graph/shut-offs.js';
import { stillLive } from '../lookup/still-live.js';
import { facts, type Topic } from './topic.js';

export const live: Topic = {
  name: 'live',
  ask: 'find.live',
  words: ['live', 'main', 'mains', 'kill', 'killed', 'killing', 'off', 'hot', 'dead'],
  answer(assessment) {
    const { shell } = assessment.model;
    const rows = stillLive(assessment).flatMap(({ panel, isolation, opened }) => [
      {
        id: panel,
        what:
          isolation.verified && isolation.sourcesLeft.length === 0
            ? 'all of this makes it dead'
            : `not proved dead by all of this: see \`shellbook isolate ${shell.id} ${panel}\``,
        facts: facts(
          ['do', isolation.actions.filter((one) => one.step === 'source').map((one) => one.say.replace(/\.$/u, ''))],
          ['sources', isolation.sources],
          ['sources left', isolation.sourcesLeft.length > 0 ? isolation.sourcesLeft : 'none'],
        ),
      },
      ...opened.map((one) => ({
        id: one.id,
        what: one.sources.length > 0 ? `with only this off, ${panel} is still live` : `with this off, ${panel}`,
        facts: facts(
          ['fed by', one.sources.length > 0 ? one.sources : 'no recorded source'],
          ['still live at it', one.before.runs],
          ['from', one.before.sources],
        ),
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
const DANGER = ['gas', 'fuel', 'dc', 'ac'];

export const emergency: Topic = {
  name: 'emergency',
  ask: 'find.emergency',
  words: ['emergency', 'rescue', 'fire', 'cut', 'zones', 'gas', 'battery', 'batteries'],
  answer({ model: { shell } }) {
    const nodes = new Map(shell.nodes.map((node) => [node.id, node] as const));
    const sources = shell.nodes.filter((node) => DANGER.includes(node.medium) && behaviourOf(node).way === 'source');
    const ids = new Set(sources.map((node) => node.id));
    const shuts = new Map<string, string[]>();
    for (const { source, links } of shutOffs(shell))
      if (ids.has(source)) for (const { id } of links) shuts.set(id, [...(shuts.get(id) ?? []), source]);
    const rows = [
      ...sources.map((node) => ({
        id: node.id,
        what: `${node.name ?? node.medium}: do not cut here`,
        facts: facts(['medium', node.medium]),
      })),
      ...[...shuts].map(([id, of]) => ({
        id,
        what: nodes.get(id)?.name ?? '',
        facts: facts(['shuts', [...new Set(of)]]),
      })),
      ...shell.tanks
        .filter(({ use }) => use === 'fuel' || use === 'gas')
        .map((tank) => ({ id: tank.id, what: `${tank.contents} tank: do not cut here`, facts: [] })),
      ...shell.tanks
        .filter(({ use }) => use === undefined)
        .map((tank) => ({ id: tank.id, what: 'tank: what it is for is not recorded (`use`); take it as fuel', facts: [] })),
    ];
    return {
      rows,
      notes: [
        'Everyone out and away first, then call the emergency services. Shut and switch off only if that is safe.',
        'They are drawn on the page “In an emergency” of every edition.',
      ],
    };
  },
};
