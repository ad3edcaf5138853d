import { facts, type Topic } from './topic.js';

export const repairs: Topic = {
  name: 'repairs',
  ask: 'find.repaired',
  words: ['repair', 'repairs', 'repaired', 'rework', 'reworked', 'finding', 'findings', 'concession', 'concessions'],
  beside: ['before', 'already', 'ever', 'here'],
  answer({ model: { shell } }) {
    const rows = [
      ...shell.findings.map((one) => ({
        id: one.id,
        what: one.description,
        facts: facts(['of', one.of], ['raised', one.raised], ['decision', one.decision ?? 'undecided'], ['closed', one.closed]),
      })),
      ...shell.welds.flatMap((weld) =>
        weld.inspections
          .filter((look) => look.repair !== undefined)
          .map((look) => ({
            id: weld.id,
            what: `weld repaired ${look.repair === 1 ? 'once' : `${look.repair} times`}`,
            facts: facts(['of', weld.joins.flat()], ['date', look.date], ['result', look.result]),
          })),
      ),
    ];
    return { rows, notes: rows.length === 0 ? ['No repair is recorded.'] : [] };
  },
};

export const changes: Topic = {
  name: 'changes',
  ask: 'find.changed',
  words: [
    'book',
    'changed',
    'change',
    'changes',
    'since',
    'amended',
    'amendment',
    'amendments',
    'altered',
    'alteration',
    'alterations',
  ],
  answer({ model: { shell } }) {
    const rows = shell.amendments.map((one) => ({
      id: one.id,
      what: one.reason,
      facts: facts(['changes', one.changes], ['date', one.date], ['by', one.by]),
    }));
    return {
      rows,
      notes: [
        ...(rows.length === 0 ? ['No change after close-out is recorded.'] : []),
        `Every revision: shellbook history ${shell.id}`,
      ],
    };
  },
};
