import { facts, type Topic, type TopicRow } from './topic.js';
import { torqueSpecified } from './torque-uses.js';

export const torques: Topic = {
  name: 'torque',
  ask: 'find.torque',
  words: ['torque', 'torques', 'tighten', 'tightening', 'tightened'],
  answer({ model: { shell } }) {
    const rows: readonly TopicRow[] = [
      ...shell.clamps.map((clamp) => ({
        id: clamp.id,
        what: [clamp.clampKind, clamp.bolt].filter(Boolean).join(', '),
        facts: facts(
          ['torque', clamp.torqueNm ?? 'not recorded', 'nm'],
          ['specified, at least', torqueSpecified(shell, [clamp.id])?.leastNm, 'nm'],
          ['tolerance', torqueSpecified(shell, [clamp.id])?.note],
          ['check again', clamp.checkAgain],
        ),
      })),
      ...shell.nodes
        .filter((node) => node.torqueNm !== undefined)
        .map((node) => ({ id: node.id, what: node.name ?? node.nodeKind, facts: facts(['torque', node.torqueNm, 'nm']) })),
      ...shell.panels
        .filter((panel) => panel.fixing?.torqueNm !== undefined)
        .map((panel) => ({
          id: panel.id,
          what: panel.name ?? `${panel.panelKind} panel`,
          facts: facts(['torque', panel.fixing?.torqueNm, 'nm'], ['fasteners', panel.fixing?.method]),
        })),
    ];
    return { rows, notes: ['For what is not listed see its maker’s papers, the chassis maker’s first.'] };
  },
};
